// Files that cannot be read, and text that must never stop the program.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <random>

#include "data_site_text.h"

namespace quell::test {
namespace {

using testing::HasSubstr;

void expect_one_problem(const io::SiteFile& file, const char* words) {
  ASSERT_EQ(file.problems.size(), 1u) << all_problems(file);
  EXPECT_THAT(file.problems[0].message, HasSubstr(words));
  EXPECT_FALSE(file.good());
}

TEST(BadFile, Missing) {
  expect_one_problem(io::read_site_file("no/such/site.toml"), "there is no such file");
}

TEST(BadFile, Directory) {
  const Folder folder("directory");
  expect_one_problem(io::read_site_file(folder.path()), "this is a directory");
}

TEST(BadFile, Device) {
  expect_one_problem(io::read_site_file("/dev/zero"), "not an ordinary file");
}

TEST(BadFile, Pipe) {
  const Folder folder("pipe");
  const std::filesystem::path path = folder.path() / "pipe.toml";
  ASSERT_EQ(mkfifo(path.c_str(), 0600), 0);
  expect_one_problem(io::read_site_file(path), "not an ordinary file");
}

TEST(BadFile, OneGigabyte) {
  const Folder folder("large");
  const std::filesystem::path path = folder.write("large.toml", "units = \"SI\"\n");
  std::filesystem::resize_file(path, 1u << 30u);
  expect_one_problem(io::read_site_file(path), "holds 1024.0 MB; at most 16 MB are read");
}

TEST(BadFile, BinaryZeros) {
  expect_one_problem(io::read_site_text(std::string(1000, '\0'), "s.toml"), "control character 0x00");
}

TEST(BadFile, DeepLists) {
  expect_one_problem(io::read_site_text("a = " + std::string(100000, '['), "s.toml"), "nested more than 40");
}

TEST(BadFile, DeepTables) {
  std::string text = "a";
  for (int i = 0; i < 100000; ++i) text += ".a";
  expect_one_problem(io::read_site_text(text + " = 1", "s.toml"), "nested more than 40");
  expect_one_problem(io::read_site_text("[" + text + "]", "s.toml"), "nested more than 40");
}

TEST(BadFile, DeepInlineTables) {
  std::string text = "a = ";
  for (int i = 0; i < 100000; ++i) text += "{a=";
  expect_one_problem(io::read_site_text(text, "s.toml"), "nested more than 40");
}

TEST(BadFile, ManyUnknownKeysDoNotFlood) {
  std::string text(good_site);
  for (int i = 0; i < 5000; ++i) text += "odd_" + std::to_string(i) + " = 1\n";
  EXPECT_LE(io::read_site_text(text, "s.toml").problems.size(), 30u);
}

TEST(BadFile, ManyMembers) {
  std::string text(good_site);
  for (int i = 0; i < 5000; ++i) text += "[[discharges.floods]]\n";
  expect_one_problem(io::read_site_text(text, "s.toml"), "at most 500 are read");
}

/// Nothing to assert but that it returns: a crash, a hang or an exception fails the test.
void read_quietly(const std::string& text) {
  const io::SiteFile file = io::read_site_text(text, "fuzz.toml");
  for (const io::Problem& problem : file.problems) {
    EXPECT_FALSE(problem.message.empty());
    EXPECT_GE(problem.line, 0);
    EXPECT_FALSE(io::to_text(problem).empty());
  }
  EXPECT_TRUE(!file.good() || file.site.crest.net_width > 0.0);
}

std::string example(const std::string& name) {
  std::ifstream stream(std::string(QUELL_ROOT) + "/examples/" + name, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

TEST(BadFile, RandomBytesNeverCrash) {
  std::mt19937 random(7);
  for (int run = 0; run < 3000; ++run) {
    std::string text(random() % 200, ' ');
    for (char& c : text) c = static_cast<char>(random() % 256);
    read_quietly(text);
  }
}

TEST(BadFile, RandomTomlTokensNeverCrash) {
  const std::string_view tokens[] = {"[",       "]",          "{",           "}",      "=",     ",",      ".",     "\n",
                                     "\"",      "'",          "'''",         "\"\"\"", "#",     "crest",  "level", "slope",
                                     "reaches", "12",         "1e9",         "nan",    "-",     "true",   " ",     "\\",
                                     "\\u0041", "1979-05-27", "\"0.7H:1V\"", "units",  "river", "rating", "file"};
  std::mt19937 random(11);
  for (int run = 0; run < 5000; ++run) {
    std::string text;
    for (auto i = random() % 40; i > 0; --i) text += tokens[random() % std::size(tokens)];
    read_quietly(text);
  }
}

/// `good` with one to four small faults.
std::string mutated(const std::string& good, std::mt19937& random) {
  std::string text = good;
  for (auto i = 1 + random() % 4; i > 0; --i) {
    const std::size_t at = random() % text.size();
    switch (random() % 4) {
      case 0: text[at] = static_cast<char>(random() % 256); break;
      case 1: text.erase(at, random() % 30); break;
      case 2: text.insert(at, text.substr(random() % text.size(), random() % 30)); break;
      default: text[at] = "0123456789-+.eE\"'[]{}=,#\n"[random() % 25]; break;
    }
    if (text.empty()) text = " ";
  }
  return text;
}

TEST(BadFile, MutatedExamplesNeverCrash) {
  std::mt19937 random(13);
  for (const char* name : {"01-gravity-dam/site.toml", "02-small-dam/site.toml"}) {
    const std::string good = example(name);
    ASSERT_FALSE(good.empty()) << name;
    for (int run = 0; run < 1500; ++run) read_quietly(mutated(good, random));
  }
}

TEST(BadFile, MutatedDataNeverCrashes) {
  std::mt19937 random(17);
  const Folder folder("mutated_data");
  const auto files = good_data_files();
  for (const auto& [name, text] : files) folder.write(name, text);
  const std::string site(good_data_site);
  for (int run = 0; run < 2000; ++run) {
    const io::SiteFile file = io::read_site_text(mutated(site, random), folder.path() / "site.toml");
    for (const io::Problem& problem : file.problems) EXPECT_FALSE(io::to_text(problem).empty());
  }
  for (int run = 0; run < 150; ++run)
    for (const auto& [name, text] : files) {
      folder.write(name, mutated(text, random));
      const io::SiteFile file = io::read_site_text(site, folder.path() / "site.toml");
      for (const io::Problem& problem : file.problems) EXPECT_FALSE(io::to_text(problem).empty());
      folder.write(name, text);
    }
}

}  // namespace
}  // namespace quell::test
