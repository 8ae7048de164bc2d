// A site read from memory: its files from a source, and where keys, inputs and problems stand.
#include <gmock/gmock.h>

#include "quell/io/site_file.h"

namespace quell {
namespace {

using io::SiteFile;

const std::string with_file = R"(units = "SI"
crest = { level = 130, design_head = 5, net_width = 30, approach_depth = 20 }
chute = { slope = 1.25, width = 30, manning_n = 0.014 }
discharges = { design_flood = 600 }
[project]
name = "Invented"
[river]
bed_level = 100
[river.rating]
file = "tailwater.csv"
)";

const io::EchoedInput* echoed(const SiteFile& file, std::string_view section, std::string_view key) {
  for (const io::EchoedInput& input : file.inputs)
    if (input.section == section && input.key == key) return &input;
  return nullptr;
}

TEST(SiteSource, FilesComeFromTheSourceByTheNameThatStandsInTheText) {
  std::vector<std::string> asked;
  const SiteFile file = io::read_site_text(with_file, "nowhere/site.toml", [&](const std::string& name) {
    asked.push_back(name);
    return tl::expected<std::string, std::string>("discharge (m3/s), level (m)\n10, 101\n900, 107\n");
  });
  ASSERT_TRUE(file.good());
  EXPECT_THAT(asked, testing::ElementsAre("tailwater.csv"));
  EXPECT_THAT(file.site.river.rating.discharge, testing::ElementsAre(10.0, 900.0));
}

TEST(SiteSource, WhatTheSourceRefusesIsAProblemAtTheKey) {
  const SiteFile file = io::read_site_text(with_file, "site.toml", [](const std::string&) {
    return tl::expected<std::string, std::string>(tl::unexpected<std::string>("it is not here"));
  });
  ASSERT_EQ(file.problems.size(), 1u);
  EXPECT_EQ(file.problems[0].message, "tailwater.csv: it is not here");
  EXPECT_EQ(file.problems[0].line, 10);
  EXPECT_EQ(file.problems[0].key, "river.rating.file");
}

TEST(SiteSource, ProblemsInAFileHaveNoKeyOfTheSite) {
  const SiteFile file = io::read_site_text(with_file, "site.toml", [](const std::string&) {
    return tl::expected<std::string, std::string>("discharge (m3/s), level (m)\n10, 101\n5, 107\n");
  });
  ASSERT_FALSE(file.good());
  EXPECT_EQ(file.problems[0].file, "tailwater.csv");
  EXPECT_EQ(file.problems[0].key, "");
}

TEST(SiteSource, InputsKnowTheirLine) {
  const SiteFile file = io::read_site_text(with_file, "site.toml", [](const std::string&) {
    return tl::expected<std::string, std::string>("discharge (m3/s), level (m)\n10, 101\n900, 107\n");
  });
  ASSERT_NE(echoed(file, "crest", "level"), nullptr);
  EXPECT_EQ(echoed(file, "crest", "level")->line, 2);
  EXPECT_EQ(echoed(file, "river", "bed_level")->line, 8);
  ASSERT_NE(echoed(file, "basin", "types"), nullptr);
  EXPECT_EQ(echoed(file, "basin", "types")->line, 0);
  EXPECT_TRUE(echoed(file, "basin", "types")->is_default);
}

struct KeyCase {
  const char* text;
  const char* key;
};

TEST(SiteSource, AProblemNamesItsKey) {
  const KeyCase cases[] = {
      {"units = \"SI\"\n[crest]\nlevel = \"130 s\"\n", "crest.level"},
      {"units = \"SI\"\n[crest]\nlevle = \"130 m\"\n", "crest.levle"},
      {"units = \"SI\"\n[[chute.reaches]]\nslope = 1\nlength = 5\n[[chute.reaches]]\nslope = \"x\"\n",
       "chute.reaches[2].slope"},
      {"units = \"SI\"\ncrest = { level = 130, design_head = -5 }\n", "crest.design_head"},
      {"units = \"SI\"\n[project]\nname = 7\n", "project.name"},
  };
  for (const KeyCase& c : cases) {
    const SiteFile file = io::read_site_text(c.text, "site.toml");
    EXPECT_THAT(file.problems, testing::Contains(testing::Field(&io::Problem::key, c.key))) << c.text;
  }
}

}  // namespace
}  // namespace quell
