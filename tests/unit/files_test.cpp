#include "quell/io/files.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace quell::io {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

// Test vectors of FIPS 180-4's companion examples (NIST, "SHA-256" examples, one and two blocks); the empty message and the
// million letters are the common ones, checked with sha256sum.
TEST(Sha256, TestVectors) {
  EXPECT_EQ(sha256("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  EXPECT_EQ(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256(std::string(1000000, 'a')), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST(Sha256, LengthsAroundTheBlockDiffer) {
  for (std::size_t size = 54; size < 67; ++size) EXPECT_NE(sha256(std::string(size, 'a')), sha256(std::string(size + 1, 'a')));
}

class WriteFiles : public testing::Test {
 protected:
  void SetUp() override { fs::remove_all(root); }
  void TearDown() override { fs::remove_all(root); }
  const fs::path root = fs::path(QUELL_BUILD) / "test-folders" / testing::UnitTest::GetInstance()->current_test_info()->name();

  std::string content(const std::string& name) const {
    std::ifstream stream(root / name, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
  }
  std::size_t count() const {
    return fs::exists(root) ? static_cast<std::size_t>(std::distance(fs::recursive_directory_iterator(root), {})) : 0;
  }
};

TEST_F(WriteFiles, MakesFoldersAndWritesAll) {
  const std::string binary("a\0b\r\n", 5);
  ASSERT_TRUE(write_files(root / "deep" / "er", {{"one.txt", "1"}, {"sub/two.bin", binary}}).has_value());
  EXPECT_EQ(content("deep/er/one.txt"), "1");
  EXPECT_EQ(content("deep/er/sub/two.bin"), binary);
  EXPECT_EQ(count(), 5u);
}

TEST_F(WriteFiles, ReplacesWhatWasThere) {
  ASSERT_TRUE(write_files(root, {{"one.txt", "a longer text"}}).has_value());
  ASSERT_TRUE(write_files(root, {{"one.txt", "2"}}).has_value());
  EXPECT_EQ(content("one.txt"), "2");
  EXPECT_EQ(count(), 1u);
}

TEST_F(WriteFiles, KeepsPermissionsAndLinks) {
  ASSERT_TRUE(write_files(root, {{"one.txt", "old"}}).has_value());
  fs::permissions(root / "one.txt", fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink("one.txt", root / "link.txt");
  ASSERT_TRUE(write_files(root, {{"link.txt", "new"}}, Durability::on_disk).has_value());
  EXPECT_TRUE(fs::is_symlink(root / "link.txt"));
  EXPECT_EQ(content("one.txt"), "new");
  EXPECT_EQ(fs::status(root / "one.txt").permissions(), fs::perms::owner_read | fs::perms::owner_write);
}

TEST_F(WriteFiles, WritesNothingWhereOneFileCannotBeWritten) {
  ASSERT_TRUE(write_files(root, {{"one.txt", "old"}}).has_value());
  fs::create_directory(root / "blocked");
  const auto written = write_files(root, {{"one.txt", "new"}, {"two.txt", "2"}, {"blocked", "3"}});
  ASSERT_FALSE(written.has_value());
  EXPECT_THAT(written.error(), HasSubstr("blocked"));
  EXPECT_THAT(written.error(), HasSubstr("directory"));
  EXPECT_EQ(content("one.txt"), "old");
  EXPECT_EQ(count(), 2u);
}

TEST_F(WriteFiles, TheFolderIsAFile) {
  fs::create_directories(root);
  std::ofstream(root / "file") << "x";
  const auto written = write_files(root / "file", {{"one.txt", "1"}});
  ASSERT_FALSE(written.has_value());
  EXPECT_THAT(written.error(), HasSubstr("file"));
  EXPECT_EQ(content("file"), "x");
}

TEST_F(WriteFiles, FoldersMadeInVainVanish) {
  ASSERT_FALSE(write_files(root / "a" / "b", {{"one.txt", "1"}, {"../../escape.txt", "2"}}).has_value());
  EXPECT_EQ(count(), 0u);
  EXPECT_FALSE(write_files(root, {{"/absolute", "1"}}).has_value());
  EXPECT_FALSE(write_files(root, {{"", "1"}}).has_value());
}

}  // namespace
}  // namespace quell::io
