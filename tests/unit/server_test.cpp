// Parts of `quell serve` that need no socket; tests/server asks a running one.
#include <gmock/gmock.h>

#include "quell/app/server/guard.h"
#include "quell/app/server/tabs.h"

namespace quell::app::server {
namespace {

using namespace std::chrono_literals;
using testing::HasSubstr;

TEST(Tokens, Are128BitsAndDiffer) {
  const std::string token = random_token();
  EXPECT_EQ(token.size(), 32u);
  EXPECT_EQ(token.find_first_not_of("0123456789abcdef"), std::string::npos);
  EXPECT_NE(token, random_token());
}

TEST(Tokens, AreComparedWhole) {
  EXPECT_TRUE(same_bytes("abc", "abc"));
  for (const char* other : {"", "ab", "abd", "xbc", "abcd", "abcabc"}) EXPECT_FALSE(same_bytes(other, "abc")) << other;
  EXPECT_FALSE(same_bytes(std::string_view("ab\0", 3), "ab"));
}

Request asking(std::string method, std::string target) {
  return {
      .method = std::move(method), .target = std::move(target), .host = {"127.0.0.1:8470"}, .media_type = "application/json"};
}

TEST(Guards, AdmitTheNameBehindTheToken) {
  const Guard guard("t0ken", 8470);
  EXPECT_EQ(guard.address(), "http://127.0.0.1:8470/t0ken/");
  EXPECT_EQ(guard.admit(asking("GET", "/t0ken/"))->name, "");
  EXPECT_EQ(guard.admit(asking("GET", "/t0ken/?from=terminal"))->name, "");
  EXPECT_EQ(guard.admit(asking("POST", "/t0ken/document/open"))->name, "document/open");
  EXPECT_EQ(guard.admit(asking("GET", "/t0ken/document?tab=7"))->tab, "7");
  EXPECT_EQ(guard.admit(asking("GET", "/t0ken")).error().location, "/t0ken/");
  for (const char* target : {"/t0ke/", "/t0ken1/", "t0ken/", "", "/", "//t0ken/", "/?/t0ken/", "/#/t0ken/"})
    EXPECT_EQ(guard.admit(asking("GET", target)).error().status, 403) << target;
  for (const char* target : {"/t0ken/a..b", "/t0ken/%41", "/t0ken/a//b", "/t0ken/a b", "/t0ken/\\"})
    EXPECT_EQ(guard.admit(asking("GET", target)).error().status, 404) << target;
}

TEST(Bodies, NestOnlySoDeep) {
  const auto nested = [](std::size_t depth) {
    return "{\"a\":" + std::string(depth - 1, '[') + std::string(depth - 1, ']') + "}";
  };
  EXPECT_TRUE(parse_body(nested(32)).has_value());
  EXPECT_THAT(parse_body(nested(33)).error(), HasSubstr("deeper than 32"));
}

TEST(Bodies, HoldEachKeyOnce) {
  EXPECT_TRUE(parse_body(R"({"a":{"b":1},"c":{"b":1},"d":[{"b":1},{"b":2}]})").has_value());
  EXPECT_THAT(parse_body(R"({"a":1,"b":2,"a":1})").error(), HasSubstr("'a' comes twice"));
  EXPECT_THAT(parse_body(R"({"d":[{"b":1,"b":2}]})").error(), HasSubstr("'b' comes twice"));
}

TEST(Tabs, AreForgottenWhenTheyFallSilent) {
  Tabs tabs;
  const Tabs::Time start{};
  tabs.seen("one", start);
  tabs.seen("two", start + 60s);
  EXPECT_EQ(tabs.others("one", start + 60s), 1u);
  EXPECT_EQ(tabs.others("", start + 60s), 2u);
  EXPECT_EQ(tabs.others("two", start + 75s), 1u);
  EXPECT_EQ(tabs.others("two", start + 76s), 0u);
  EXPECT_EQ(tabs.others("three", start + 76s), 1u);
  tabs.closed("two");
  EXPECT_EQ(tabs.others("three", start + 76s), 0u);
}

TEST(Tabs, AreNotCountedWithoutEnd) {
  Tabs tabs;
  for (int i = 0; i < 5000; ++i) tabs.seen(std::to_string(i), {});
  EXPECT_EQ(tabs.others("", {}), Tabs::most);
}

}  // namespace
}  // namespace quell::app::server
