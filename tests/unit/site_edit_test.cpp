// Edits of a site file: what changes, and that nothing else does.
#include "quell/io/site_edit.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace quell::io {
namespace {

using ::testing::HasSubstr;

SiteEdit set(std::string path, std::string value) {
  return {std::move(path), EditAction::set, std::move(value)};
}
SiteEdit removal(std::string path) {
  return {std::move(path), EditAction::remove, ""};
}
SiteEdit insertion(std::string path, std::string value = "") {
  return {std::move(path), EditAction::insert, std::move(value)};
}

std::string edited(std::string_view text, const std::vector<SiteEdit>& edits) {
  const auto result = apply_edits(text, edits);
  return result ? *result : "refused: " + result.error().front().message;
}
std::string edited(std::string_view text, const SiteEdit& edit) {
  return edited(text, std::vector{edit});
}

TEST(SiteEdit, KeepsTheColumnOfTheComment) {
  EXPECT_EQ(edited("[crest]\nlevel = \"132.0 m\"      # ä\npiers = 2\n", set("crest.level", "\"1132.25 m\"")),
            "[crest]\nlevel = \"1132.25 m\"    # ä\npiers = 2\n");
  EXPECT_EQ(edited("[crest]\nlevel = \"132.0 m\" # here\n", set("crest.level", "\"1132.25 m\"")),
            "[crest]\nlevel = \"1132.25 m\" # here\n");
  EXPECT_EQ(edited("[crest]\nlevel = \"132.0 m\" # here\n", set("crest.level", "9")), "[crest]\nlevel = 9         # here\n");
  EXPECT_EQ(edited("[crest]\nlevel = \"132.0 m\"\t# here\n", set("crest.level", "9")), "[crest]\nlevel = 9\t# here\n");
  EXPECT_EQ(edited("[project]\nname = \"Ä # ö\"   # c\n", set("project.name", "\"Über\"")),
            "[project]\nname = \"Über\"    # c\n");
  EXPECT_EQ(edited("[project]\nname = \"Ä\" # ü \"quoted\n", set("project.name", "'#'")),
            "[project]\nname = '#' # ü \"quoted\n");
}

TEST(SiteEdit, CountsCharactersAndNotBytes) {
  EXPECT_EQ(edited("gates = { patterns = [ { name = \"é – 漢字 🌊\", openings = [\"1 m\"] } ] } # ü\n",
                   set("gates.patterns[1].openings", "[\"2 m\"]")),
            "gates = { patterns = [ { name = \"é – 漢字 🌊\", openings = [\"2 m\"] } ] } # ü\n");
}

TEST(SiteEdit, LineEndsAndByteOrderMarkStay) {
  const std::string text = "\xEF\xBB\xBFunits = \"SI\"\r\n\r\n[crest]\r\nlevel = \"1 m\"   # c\r\npiers = 2";
  EXPECT_EQ(edited(text, set("crest.level", "\"10 m\"")),
            "\xEF\xBB\xBFunits = \"SI\"\r\n\r\n[crest]\r\nlevel = \"10 m\"  # c\r\npiers = 2");
  EXPECT_EQ(edited(text, set("crest.shape", "\"ogee\"")), text + "\r\nshape = \"ogee\"");
  EXPECT_EQ(edited(text, set("ground.level", "3")), text + "\r\n\r\n[ground]\r\nlevel = 3");
  EXPECT_EQ(edited(text, removal("crest.level")), "\xEF\xBB\xBFunits = \"SI\"\r\n\r\n[crest]\r\npiers = 2");
}

TEST(SiteEdit, AnAbsentKeyGoesBehindTheLastOfItsSection) {
  EXPECT_EQ(edited("[crest]\n  level = 3 # c\n\n# of the chute\n[chute]\n", set("crest.piers", "2")),
            "[crest]\n  level = 3 # c\n  piers = 2\n\n# of the chute\n[chute]\n");
  EXPECT_EQ(edited("[river]\n[river.bed]\nbed_slope = 1\n", set("river.bed_level", "2")),
            "[river]\nbed_level = 2\n[river.bed]\nbed_slope = 1\n");
  EXPECT_EQ(edited("# a file\n\n[crest]\nlevel = 3\n", set("units", "\"SI\"")),
            "# a file\n\nunits = \"SI\"\n\n[crest]\nlevel = 3\n");
  EXPECT_EQ(edited("crest.level = 3\ncrest.piers = 1\n[chute]\n", set("crest.shape", "\"ogee\"")),
            "crest.level = 3\ncrest.piers = 1\ncrest.shape = \"ogee\"\n[chute]\n");
  EXPECT_EQ(edited("crest = {}\n", set("crest.piers", "1")), "crest = { piers = 1 }\n");
  EXPECT_EQ(edited("crest = { level = 2 }  # c\n", set("crest.piers", "1")), "crest = { level = 2, piers = 1 }  # c\n");
  EXPECT_EQ(edited("", set("crest.level", "1")), "[crest]\nlevel = 1\n");
}

TEST(SiteEdit, AnAbsentSectionGoesToItsPlaceInTheSchema) {
  const std::string text =
      "units = \"SI\"\n\n[project]\nname = \"x\"\n# level = 3\n\n# the chute\n[chute]\nwidth = 3\n\n[ground]\n";
  EXPECT_EQ(edited(text, set("crest.level", "7")),
            "units = \"SI\"\n\n[project]\nname = \"x\"\n# level = 3\n\n[crest]\nlevel = 7\n\n# the chute\n[chute]\nwidth = "
            "3\n\n[ground]\n");
  EXPECT_EQ(
      edited(text, set("river.bed.bed_slope", "0.1")),
      "units = \"SI\"\n\n[project]\nname = \"x\"\n# level = 3\n\n# the chute\n[chute]\nwidth = 3\n\n[river.bed]\nbed_slope = "
      "0.1\n\n[ground]\n");
  EXPECT_EQ(edited("[ground]\nlevel = 1\n", insertion("project", "{ name = \"n\", author = \"a\" }")),
            "[project]\nname = \"n\"\nauthor = \"a\"\n\n[ground]\nlevel = 1\n");
  EXPECT_EQ(edited("[crest]\nlevel = 1\n", insertion("outlets", "{ name = \"o\" }")),
            "[crest]\nlevel = 1\n\n[[outlets]]\nname = \"o\"\n");
  EXPECT_EQ(edited("[river.bed]\nbed_slope = 1\n", set("river.bed_level", "2")),
            "[river]\nbed_level = 2\n\n[river.bed]\nbed_slope = 1\n");
}

TEST(SiteEdit, MembersOfListsOfSections) {
  const std::string text = "[[outlets]]\nname = \"a\"\n\n# second\n[[outlets]]\nname = \"b\"\n\n[chute]\n";
  EXPECT_EQ(
      edited(text, insertion("outlets", "{ name = \"c\", area = 3 }")),
      "[[outlets]]\nname = \"a\"\n\n# second\n[[outlets]]\nname = \"b\"\n\n[[outlets]]\nname = \"c\"\narea = 3\n\n[chute]\n");
  EXPECT_EQ(edited(text, insertion("outlets[2]", "{ name = \"c\" }")),
            "[[outlets]]\nname = \"a\"\n\n[[outlets]]\nname = \"c\"\n\n# second\n[[outlets]]\nname = \"b\"\n\n[chute]\n");
  EXPECT_EQ(edited(text, removal("outlets[1]")), "# second\n[[outlets]]\nname = \"b\"\n\n[chute]\n");
  EXPECT_EQ(edited(text, removal("outlets[2]")), "[[outlets]]\nname = \"a\"\n\n[chute]\n");
  EXPECT_EQ(edited(text, removal("outlets")), "[chute]\n");
  EXPECT_EQ(edited(text, {removal("outlets[2]"), removal("outlets[1]")}), "[chute]\n");
  EXPECT_EQ(edited(text, set("outlets[2].area", "5")),
            "[[outlets]]\nname = \"a\"\n\n# second\n[[outlets]]\nname = \"b\"\narea = 5\n\n[chute]\n");
}

TEST(SiteEdit, MembersOfInlineLists) {
  const std::string text = "floods = [\n  { a = 1 }, # one\n  { a = 2 },\n]\n";
  const std::string head = "[discharges]\n";
  EXPECT_EQ(edited(head + text, insertion("discharges.floods", "{ a = 3 }")),
            head + "floods = [\n  { a = 1 }, # one\n  { a = 2 },\n  { a = 3 },\n]\n");
  EXPECT_EQ(edited(head + text, insertion("discharges.floods[1]", "{ a = 3 }")),
            head + "floods = [\n  { a = 3 },\n  { a = 1 }, # one\n  { a = 2 },\n]\n");
  EXPECT_EQ(edited(head + text, removal("discharges.floods[1]")), head + "floods = [\n  { a = 2 },\n]\n");
  EXPECT_EQ(edited(head + text, removal("discharges.floods[2]")), head + "floods = [\n  { a = 1 }, # one\n]\n");
  EXPECT_EQ(edited(head + "floods = [\n  { a = 1 }   # one\n]\n", insertion("discharges.floods")),
            head + "floods = [\n  { a = 1 },  # one\n  {}\n]\n");
  EXPECT_EQ(edited("[basin]\ntypes = [\"a\", \"b\"] # c\n", insertion("basin.types", "\"d\"")),
            "[basin]\ntypes = [\"a\", \"b\", \"d\"] # c\n");
  EXPECT_EQ(edited("[basin]\ntypes = [\"a\", \"b\",]\n", insertion("basin.types", "\"d\"")),
            "[basin]\ntypes = [\"a\", \"b\", \"d\",]\n");
  EXPECT_EQ(edited("[basin]\ntypes = [\"a\", \"b\", \"c\"]\n", removal("basin.types[2]")), "[basin]\ntypes = [\"a\", \"c\"]\n");
  EXPECT_EQ(edited("[basin]\ntypes = [\"a\", \"b\"]\n", removal("basin.types[2]")), "[basin]\ntypes = [\"a\"]\n");
  EXPECT_EQ(edited("[basin]\ntypes = [ \"a\" ]\n", removal("basin.types[1]")), "[basin]\ntypes = [ ]\n");
  EXPECT_EQ(edited("[basin]\ntypes = [ ]\n", insertion("basin.types", "\"a\"")), "[basin]\ntypes = [ \"a\" ]\n");
  EXPECT_EQ(edited("[basin]\ntypes = [\n  # none yet\n]\n", insertion("basin.types", "\"a\"")),
            "[basin]\ntypes = [\n  \"a\",\n  # none yet\n]\n");
  EXPECT_EQ(edited("[basin]\ntypes = [\"a\", \"b\",\n \"c\"]\n", removal("basin.types[2]")),
            "[basin]\ntypes = [\"a\",\n \"c\"]\n");
  EXPECT_EQ(edited("[basin]\ntypes = [\n \"a\" # one\n , \"b\"\n]\n", removal("basin.types[1]")),
            "[basin]\ntypes = [\n  # one\n  \"b\"\n]\n");
  EXPECT_EQ(edited("[basin]\ntypes = [\"a\", # one\n \"b\" # two\n]\n", set("basin.types[2]", "\"bbb\"")),
            "[basin]\ntypes = [\"a\", # one\n \"bbb\" # two\n]\n");
}

TEST(SiteEdit, WordsOfInlineTables) {
  const std::string text = "[gates]\ncoefficient = { value = 0.6, uncertainty = \"gate coefficient\" }  # c\n";
  EXPECT_EQ(edited(text, set("gates.coefficient.value", "0.62")),
            "[gates]\ncoefficient = { value = 0.62, uncertainty = \"gate coefficient\" } # c\n");
  EXPECT_EQ(edited(text, {removal("gates.coefficient.uncertainty"), set("gates.coefficient.cov", "0.1")}),
            "[gates]\ncoefficient = { value = 0.6, cov = 0.1 }  # c\n");
  EXPECT_EQ(edited(text, removal("gates.coefficient.value")),
            "[gates]\ncoefficient = { uncertainty = \"gate coefficient\" }  # c\n");
  EXPECT_EQ(edited(text, set("gates.coefficient", "0.6")),
            "[gates]\ncoefficient = 0.6" + std::string(48, ' ') + "# c\n");  // the column of the comment stays
}

TEST(SiteEdit, RemovedSectionsTakeTheirCommentsAlong) {
  const std::string text =
      "# the file\n\n[river]\nbed_level = 1\n\n# of the bed,\n# as surveyed\n[river.bed]\nbed_slope = 1 # s\n# bed_width = "
      "3\n\n"
      "# a note\n\n[basin]\n\n[ground]\nlevel = 2\n";
  EXPECT_EQ(edited(text, removal("river.bed")),
            "# the file\n\n[river]\nbed_level = 1\n\n# a note\n\n[basin]\n\n[ground]\nlevel = 2\n");
  EXPECT_EQ(edited(text, removal("river")), "# the file\n\n# a note\n\n[basin]\n\n[ground]\nlevel = 2\n");
  EXPECT_EQ(edited(text, removal("ground")), text.substr(0, text.find("\n[ground]")));
  EXPECT_EQ(edited("# file\n[crest]\nlevel = 1\n", removal("crest")), "# file\n");
  EXPECT_EQ(edited("[project]\nnotes = \"\"\"\n# no comment\"\"\"\n[crest]\n", removal("crest")),
            "[project]\nnotes = \"\"\"\n# no comment\"\"\"\n");
  EXPECT_EQ(edited("river.bed.bed_slope = 1\nunits = \"SI\"\n", removal("river.bed")), "units = \"SI\"\n");
}

TEST(SiteEdit, LinesOfManyLineValuesGoTogether) {
  EXPECT_EQ(edited("[a]\nx = [ # c\n 1,\n # d\n 2 ] # e\n\ny = 3\n", removal("a.x")), "[a]\n\ny = 3\n");
  EXPECT_EQ(edited("[a]\nx = '''\n]\n'''\ny = 3 # \n", set("a.x", "[1,\n2]")), "[a]\nx = [1,\n2]\ny = 3 # \n");
}

TEST(SiteEdit, RefusesWhatIsNotOneValue) {
  const std::string text = "[crest]\nlevel = 3\nshape = \"ogee\"\n";
  for (const char* value : {"",        " ",    "1 2",  "1 # c", "1\n",        "1\nlevel = 2", "1\n[chute]", "ogee",
                            "412.5 m", "]",    "[1",   "{",     "\"a",        "a = 1",        "'''",        "1,2",
                            "#",       "\x01", "\xff", "[1]]",  "{ a = 1 }}", "\"\"\"\n",     "1\r\n",      "= 1"}) {
    const auto result = apply_edits(text, std::vector{set("crest.level", value)});
    EXPECT_FALSE(result.has_value()) << value << "\n" << *result;
  }
  EXPECT_THAT(edited(text, set("crest.shape", "broad")), HasSubstr("crest.shape: words stand in quotes: shape = \"broad\""));
  EXPECT_THAT(edited(text, set("crest.level", "412.5 m")), HasSubstr("stands in quotes: level = \"412.5 m\""));
  EXPECT_FALSE(apply_edits(text, std::vector{set("crest.level", std::string(100000, '['))}).has_value());
}

TEST(SiteEdit, RefusesPathsThatLeadNowhere) {
  const std::string text = "[crest]\nlevel = 3\n[[outlets]]\nname = \"a\"\n[basin]\ntypes = [\"a\"]\n";
  EXPECT_THAT(edited(text, set("crest.levle", "3")), HasSubstr("did you mean 'level'?"));
  EXPECT_THAT(edited(text, set("outlets.name", "\"b\"")), HasSubstr("say which member, as in outlets[1].name"));
  EXPECT_THAT(edited(text, set("outlets[2].name", "\"b\"")), HasSubstr("the list has 1 member"));
  EXPECT_THAT(edited(text, set("crest", "3")), HasSubstr("is a section"));
  EXPECT_THAT(edited(text, set("crest.level.cov", "3")), HasSubstr("is a value and holds no cov"));
  EXPECT_THAT(edited(text, set("crest.design_head.cov", "3")), HasSubstr("set its whole value"));
  EXPECT_THAT(edited(text, set("gates.rules.pattern", "\"p\"")), HasSubstr("is a list: insert a member"));
  EXPECT_THAT(edited(text, removal("chute.slope")), HasSubstr("not in the file"));
  EXPECT_THAT(edited(text, insertion("crest")), HasSubstr("there already"));
  EXPECT_THAT(edited(text, insertion("outlets", "3")), HasSubstr("takes a table"));
  EXPECT_THAT(edited(text, insertion("outlets[5]", "{}")), HasSubstr("the list has 1 member"));
  for (const char* path : {"", ".", "crest.", "crest..level", "crest level", "crest[0]", "outlets[x]", "outlets[1", "outlets[",
                           "a[1][2]", "a.b.c.d.e.f.g.h.i", "ä"})
    EXPECT_THAT(edited(text, set(path, "3")), HasSubstr("a path is written like")) << path;
}

/// What the layout cannot follow is refused, not guessed.
TEST(SiteEdit, RefusesWhatItCannotChangeAlone) {
  EXPECT_THAT(edited("river = { bed.bed_slope = 1, bed.mean_size = 2 }\n", removal("river.bed")),
              HasSubstr("set the whole table"));
  EXPECT_EQ(edited("river = { bed.bed_slope = 1, bed.mean_size = 2 }\n", removal("river.bed.bed_slope")),
            "river = { bed.mean_size = 2 }\n");
  EXPECT_EQ(edited("river = { bed.bed_slope = 1 }\n", set("river.bed.mean_size", "2")),
            "river = { bed.bed_slope = 1, bed.mean_size = 2 }\n");
}

TEST(SiteEdit, TellsWhereATextIsNotToml) {
  const auto result = apply_edits("[crest]\nlevel = 12 m\n", std::vector{set("crest.level", "3")});
  ASSERT_FALSE(result.has_value());
  EXPECT_EQ(result.error().front().line, 2);
  EXPECT_EQ(result.error().front().excerpt, "level = 12 m");
}

TEST(SiteEdit, MakesAllEditsOrNone) {
  const std::string text = "[crest]\nlevel = 3\n";
  EXPECT_EQ(edited(text, {set("crest.level", "4"), set("crest.piers", "2"), removal("crest.level")}), "[crest]\npiers = 2\n");
  EXPECT_THAT(edited(text, {set("crest.level", "4"), removal("crest.piers")}), HasSubstr("refused: crest.piers"));
  EXPECT_EQ(edited(text, std::vector<SiteEdit>{}), text);
}

}  // namespace
}  // namespace quell::io
