// Worked examples of several steps in the validation book: the steps are run in order with the numbers given, a wrong number
// fails, and what is wrong in a case is named with its step.
#include <gmock/gmock.h>

#include "quell/app/validation.h"

namespace quell::app {
namespace {

using ::testing::HasSubstr;

struct CaseParts {
  std::string given = R"(y1 = "1 m", V1 = "18.79255171603899 m/s")";  // F1 = 6: y2 = 8 y1
  std::string steps = R"({ method = "jump.sequent_depth.rectangular", inputs = { y1 = "y1", V1 = "V1" } },
    { let = "rise = y2 - y1; q = y1*V1" },
    { method = "jump.energy_loss.rectangular", inputs = { y1 = "y1", y2 = "2*y2/2" }, as = { dE = "loss" } })";
  std::string expect = R"(y2 = "8 m", rise = "7 m", loss = "10.71875 m")";
  std::string tolerance = "1e-9";
  std::string more = {};
};

CheckedFile run(const CaseParts& parts) {
  const std::string text =
      "source = \"Nobody: an invented book\"\ntitle = \"invented\"\nknown = \"computed\"\n[[case]]\nplace = \"p. 1\"\nwhy = "
      "\"invented\"\ngiven = { " +
      parts.given + " }\nsteps = [ " + parts.steps + " ]\nexpect = { " + parts.expect + " }\ntolerance = " + parts.tolerance +
      "\n" + parts.more;
  return run_checks("invented.toml", text);
}

std::string only_fault(const CaseParts& parts) {
  const CheckedFile file = run(parts);
  EXPECT_FALSE(file.passed());
  return file.faults.size() == 1 ? file.faults[0] : std::string("not exactly one fault");
}

TEST(WorkedCase, RunsItsStepsInOrder) {
  const CheckedFile file = run({});
  EXPECT_TRUE(file.passed()) << (file.faults.empty() ? "" : file.faults[0]);
  ASSERT_EQ(file.rows.size(), 3U);
}

/// A number of a let belongs to the method called last before it, and is printed in the unit of the book.
TEST(WorkedCase, NamesTheMethodOfEachNumber) {
  const CheckedFile file = run({.expect = R"(rise = "22.9659 ft", loss = "10.71875 m")", .tolerance = "\"0.0001 ft\""});
  ASSERT_EQ(file.rows.size(), 2U);
  EXPECT_EQ(file.rows[0].method, "jump.energy_loss.rectangular");
  EXPECT_EQ(file.rows[1].method, "jump.sequent_depth.rectangular");
  EXPECT_EQ(file.rows[1].got_text, "22.9659 ft");
  EXPECT_TRUE(file.passed());
}

TEST(WorkedCase, FailsOnAWrongNumber) {
  EXPECT_EQ(run({.expect = R"(y2 = "8.01 m", rise = "7 m")"}).failures(), 1U);
  EXPECT_EQ(run({.expect = R"(loss = "10.72 m")"}).failures(), 1U);
  EXPECT_EQ(run({.expect = R"(rise = "7 ft")"}).failures(), 1U);
  EXPECT_EQ(run({.given = R"(y1 = "1 m", V1 = "18.8 m/s")"}).failures(), 3U);
}

TEST(WorkedCase, FailsWhereAStepHasNoAnswer) {
  const CheckedFile file = run({.given = R"(y1 = "1 m", V1 = "2 m/s")"});
  ASSERT_EQ(file.rows.size(), 1U);
  EXPECT_FALSE(file.rows[0].passed);
  EXPECT_THAT(file.rows[0].note, HasSubstr("no answer"));
}

TEST(WorkedCase, FailsWhereAStepIsOutsideItsMethodAndDoesNotSaySo) {
  const CaseParts steep{.given = R"(q = "7.5 m3/s")",
                        .steps = R"({ method = "section.normal_depth.trapezoidal", inputs = )"
                                 R"({ b = "2", m = "0", S = "0.25", n = "0.012", Q = "q" } })",
                        .expect = R"(yn = "0.2585 m")",
                        .tolerance = "\"0.0001 m\""};
  const CheckedFile silent = run(steep);
  EXPECT_EQ(silent.failures(), 1U);
  ASSERT_EQ(silent.rows.size(), 2U);
  EXPECT_EQ(silent.rows[0].symbol, "valid");
  CaseParts said = steep;
  said.steps.replace(said.steps.rfind('}'), 1, ", expect_valid = false }");
  EXPECT_TRUE(run(said).passed());
}

TEST(WorkedCase, NamesWhatIsWrongWithItsStep) {
  const auto step = [](const std::string& text) { return only_fault({.steps = text}); };
  EXPECT_THAT(step(R"({ method = "jump.of_joy", inputs = {} })"), HasSubstr("step 1: there is no method 'jump.of_joy'"));
  EXPECT_THAT(step(R"({ let = "a = 2" }, { method = "jump.energy_loss.rectangular", inputs = { y1 = "y1" } })"),
              HasSubstr("step 2: jump.energy_loss.rectangular: input 'y2' is missing"));
  EXPECT_THAT(step(R"({ method = "jump.energy_loss.rectangular", inputs = { y1 = "y1", y2 = "y9" } })"),
              HasSubstr("unknown name 'y9'"));
  EXPECT_THAT(step(R"({ method = "jump.energy_loss.rectangular", inputs = { y1 = "y1", y2 = "8 m" } })"),
              HasSubstr("'y2 = 8 m'"));
  EXPECT_THAT(step(R"({ method = "jump.energy_loss.rectangular", inputs = { y1 = 1, y2 = 8, y3 = 9 } })"),
              HasSubstr("'y3' is no input"));
  EXPECT_THAT(step(R"({ method = "jump.energy_loss.rectangular", inputs = { y1 = 1, y2 = 8 }, as = { dF = "x" } })"),
              HasSubstr("'dF' is no output"));
  EXPECT_THAT(step(R"({ let = "y1 = 2" })"), HasSubstr("'y1' has a value already"));
  EXPECT_THAT(step(R"({ let = "a = 1/0" })"), HasSubstr("no finite value"));
  EXPECT_THAT(step(R"({ let = "a = 1", method = "x" })"), HasSubstr("key 'method' is not known"));
  EXPECT_THAT(step(R"({ methode = "x" })"), HasSubstr("key 'methode' is not known"));
  EXPECT_THAT(step(R"("jump")"), HasSubstr("step 1: is no table"));
}

TEST(WorkedCase, NamesWhatIsWrongWithItself) {
  EXPECT_THAT(only_fault({.given = "y1 = \"1 mm m m/\""}), HasSubstr("given y1"));
  EXPECT_THAT(only_fault({.steps = ""}), HasSubstr("at least one step"));
  EXPECT_THAT(only_fault({.expect = ""}), HasSubstr("at least one value"));
  EXPECT_THAT(only_fault({.expect = "y3 = 1"}), HasSubstr("no step gives 'y3'"));
  EXPECT_THAT(only_fault({.expect = R"(y2 = "8 s")"}), HasSubstr("time"));
  EXPECT_THAT(only_fault({.tolerance = "\"0.1 s\""}), HasSubstr("tolerance"));
  EXPECT_THAT(only_fault({.more = "method = \"x\"\n"}), HasSubstr("key 'method' is not known"));
  EXPECT_THAT(only_fault({.more = "provenance = \"hearsay\"\n"}), HasSubstr("provenance"));
}

/// A number that no method had a part in checks nothing of the program.
TEST(WorkedCase, RefusesANumberThatIsOnlyGiven) {
  EXPECT_THAT(only_fault({.expect = R"(y1 = "1 m")"}), HasSubstr("'y1' depends on no method"));
  EXPECT_THAT(only_fault({.steps = R"({ let = "a = 2*y1" })", .expect = "a = 2"}), HasSubstr("'a' depends on no method"));
}

}  // namespace
}  // namespace quell::app
