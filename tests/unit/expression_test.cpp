// The language of the printed equations: what it computes, what it refuses, what it looks like.
#include "quell/base/expression.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "quell/base/constants.h"
#include "quell/base/curve.h"

namespace quell {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

double value_of(const std::string& expression, std::initializer_list<NamedValue> known = {}) {
  const auto parsed = Expression::parse("result = " + expression);
  if (!parsed) {
    ADD_FAILURE() << expression << ": " << parsed.error().message;
    return std::nan("");
  }
  const auto values = parsed->evaluate({known.begin(), known.size()});
  if (!values) {
    ADD_FAILURE() << expression << ": " << values.error().message;
    return std::nan("");
  }
  return values->back().second;
}

ExpressionError parse_error(const std::string& text) {
  const auto parsed = Expression::parse(text);
  EXPECT_FALSE(parsed.has_value()) << text;
  return parsed ? ExpressionError{} : parsed.error();
}

std::string typeset(const std::string& text) {
  const auto parsed = Expression::parse(text);
  if (!parsed) {
    ADD_FAILURE() << text << ": " << parsed.error().message;
    return "";
  }
  return parsed->mathml();
}

// Every tag that is opened is closed, in order, and no bare '<' or '&' is left.
std::string imbalance(const std::string& xml) {
  std::vector<std::string> open;
  for (std::size_t at = 0; at < xml.size(); ++at) {
    if (xml[at] == '&' && xml.find(';', at) == std::string::npos) return "bare '&'";
    if (xml[at] == '>') return "stray '>'";
    if (xml[at] != '<') continue;
    const auto end = xml.find('>', at);
    if (end == std::string::npos) return "tag without end";
    const std::string tag = xml.substr(at + 1, end - at - 1);
    if (tag.find('<') != std::string::npos) return "'<' in a tag";
    at = end;
    if (tag.back() == '/') continue;
    const std::string name = tag.substr(0, tag.find(' '));
    if (name[0] != '/') {
      open.push_back(name);
    } else if (open.empty() || "/" + open.back() != name) {
      return "unexpected " + name;
    } else {
      open.pop_back();
    }
  }
  return open.empty() ? "" : "not closed: " + open.back();
}

TEST(Expression, CheckerOfTagsFindsFaults) {
  EXPECT_EQ(imbalance("<a><b/>1</a>"), "");
  EXPECT_NE(imbalance("<a><b></a></b>"), "");
  EXPECT_NE(imbalance("<a>"), "");
  EXPECT_NE(imbalance("<a>1 > 0</a>"), "");
}

TEST(Expression, Precedence) {
  EXPECT_DOUBLE_EQ(value_of("1 + 2 * 3"), 7.0);
  EXPECT_DOUBLE_EQ(value_of("7 - 2 - 1"), 4.0);
  EXPECT_DOUBLE_EQ(value_of("8 / 4 / 2"), 1.0);
  EXPECT_DOUBLE_EQ(value_of("1/2*x", {{"x", 6.0}}), 3.0);
  EXPECT_DOUBLE_EQ(value_of("-x^2", {{"x", 3.0}}), -9.0);
  EXPECT_DOUBLE_EQ(value_of("(-x)^2", {{"x", 3.0}}), 9.0);
  EXPECT_DOUBLE_EQ(value_of("2^3^2"), 512.0);
  EXPECT_DOUBLE_EQ(value_of("2^-1"), 0.5);
  EXPECT_DOUBLE_EQ(value_of("2*-3"), -6.0);
  EXPECT_DOUBLE_EQ(value_of("2 - -3"), 5.0);
  EXPECT_DOUBLE_EQ(value_of("1.5e2 + .5"), 150.5);
}

TEST(Expression, Functions) {
  EXPECT_DOUBLE_EQ(value_of("sqrt(16)"), 4.0);
  EXPECT_DOUBLE_EQ(value_of("exp(ln(5))"), 5.0);
  EXPECT_DOUBLE_EQ(value_of("log10(1000)"), 3.0);
  EXPECT_DOUBLE_EQ(value_of("sin(pi/6)"), std::sin(3.14159265358979323846 / 6.0));
  EXPECT_DOUBLE_EQ(value_of("acos(cos(0.3)) + asin(sin(0.2)) + atan(tan(0.1))"), 0.6);
  EXPECT_DOUBLE_EQ(value_of("cosh(1)^2 - sinh(1)^2"), 1.0);
  EXPECT_DOUBLE_EQ(value_of("tanh(0.5)"), std::tanh(0.5));
  EXPECT_DOUBLE_EQ(value_of("abs(-2) + max(1, 5, 3) + min(4, 2)"), 9.0);
  EXPECT_DOUBLE_EQ(value_of("round(2.6) + ceil(2.1) + floor(2.9)"), 8.0);
}

TEST(Expression, ConstantsMayBeReplaced) {
  EXPECT_DOUBLE_EQ(value_of("gamma_w / rho"), gravity);
  EXPECT_DOUBLE_EQ(value_of("nu"), water_viscosity);
  EXPECT_DOUBLE_EQ(value_of("g", {{"g", 9.80665}}), 9.80665);
}

TEST(Expression, SequentDepthOfAJumpInStatements) {
  const auto jump = Expression::parse("F1 = V1/sqrt(g*y1); y2 = y1/2*(sqrt(1 + 8*F1^2) - 1)");
  ASSERT_TRUE(jump.has_value());
  const NamedValue known[] = {{"y1", 0.5}, {"V1", 15.0}};
  const auto values = jump->evaluate(known);
  ASSERT_TRUE(values.has_value());
  ASSERT_EQ(values->size(), 2U);
  EXPECT_EQ((*values)[0].first, "F1");
  const double y2 = (*values)[1].second;
  // The momentum function q2/(g y) + y2/2 is the same on both sides of a jump.
  const double q = 7.5;
  EXPECT_NEAR(q * q / (gravity * 0.5) + 0.125, q * q / (gravity * y2) + y2 * y2 / 2, 1e-12);
}

TEST(Expression, ResidualIsLeftMinusRight) {
  const auto critical = Expression::parse("q^2/(g*yc^3) = 1");
  ASSERT_TRUE(critical.has_value());
  const NamedValue at_critical[] = {{"q", 7.5}, {"yc", std::cbrt(7.5 * 7.5 / gravity)}};
  EXPECT_NEAR(critical->residual(at_critical).value(), 0.0, 1e-12);
  const NamedValue off[] = {{"q", 7.5}, {"yc", 1.0}};
  EXPECT_DOUBLE_EQ(critical->residual(off).value(), 56.25 / gravity - 1.0);
  EXPECT_FALSE(critical->evaluate(at_critical).has_value());  // the left side is no name
}

TEST(Expression, MissingNamesAndMeaninglessValuesAreSaid) {
  const auto parsed = Expression::parse("y2 = y1 * 2");
  const auto missing = parsed->evaluate({});
  ASSERT_FALSE(missing.has_value());
  EXPECT_EQ(missing.error().message, "unknown name 'y1'");
  EXPECT_EQ(missing.error().position, 5U);
  const auto root = Expression::parse("y = sqrt(0 - 1)")->evaluate({});
  ASSERT_FALSE(root.has_value());
  EXPECT_THAT(root.error().message, HasSubstr("'y' has no finite value"));
  EXPECT_FALSE(Expression::parse("y = 1/0")->evaluate({}).has_value());
  EXPECT_FALSE(Expression::parse("y = 1/0")->residual(std::vector<NamedValue>{{"y", 1.0}}).has_value());
}

TEST(Expression, FaultyTextsAreRefusedWithTheirPlace) {
  EXPECT_EQ(parse_error("y = 2 +").position, 7U);
  EXPECT_THAT(parse_error("y = foo(2)").message, HasSubstr("unknown function 'foo'"));
  EXPECT_EQ(parse_error("y = foo(2)").position, 4U);
  EXPECT_THAT(parse_error("y = sqrt(1, 2)").message, HasSubstr("one argument"));
  EXPECT_THAT(parse_error("y = max(1)").message, HasSubstr("two or more"));
  for (const char* text : {"", " ; ", "y", "y =", "y = 2 3", "y = (1", "y = 1)", "y = 1.2.3", "y = .", "y = a $ b", "= 2",
                           "y = x = 2", "y = f(", "y = sqrt()", "y = 1e", "y = 2x"})
    EXPECT_FALSE(parse_error(text).message.empty()) << text;
  EXPECT_THAT(parse_error("y = " + std::string(3000, '(')).message, HasSubstr("nested"));
  EXPECT_THAT(parse_error("y = " + std::string(3000, '-') + "1").message, HasSubstr("nested"));
  EXPECT_THAT(parse_error("y = " + std::string(20000, '1')).message, HasSubstr("too long"));
  EXPECT_FALSE(Expression::parse(std::string_view("y = 1\0", 6)).has_value());
}

TEST(Expression, LongSumsAreFine) {
  std::string text = "y = 0";
  for (int i = 0; i < 2000; ++i) text += "+1";
  EXPECT_DOUBLE_EQ(Expression::parse(text)->evaluate({})->front().second, 2000.0);
}

TEST(Expression, AnyCurveIsAFunction) {
  if (all_curves().empty()) GTEST_SKIP() << "no curves in data/";
  for (const auto& curve : all_curves()) {
    const double middle = 0.5 * (curve.x.front() + curve.x.back());
    EXPECT_DOUBLE_EQ(value_of(std::string(curve.id) + "(x)", {{"x", middle}}), curve.at(middle)) << curve.id;
    const std::string mathml = typeset("y = " + std::string(curve.id) + "(x)");
    EXPECT_THAT(mathml, HasSubstr("<msub><mi mathvariant=\"normal\">f</mi><mtext>")) << curve.id;
    EXPECT_EQ(imbalance(mathml), "") << mathml;
  }
}

TEST(Symbol, GreekDifferencesAndSubscripts) {
  EXPECT_EQ(symbol_mathml("g"), "<mi>g</mi>");
  EXPECT_EQ(symbol_mathml("sigma"), "<mi>σ</mi>");
  EXPECT_EQ(symbol_mathml("nu"), "<mi>ν</mi>");
  EXPECT_EQ(symbol_mathml("y1"), "<msub><mi>y</mi><mn>1</mn></msub>");
  EXPECT_EQ(symbol_mathml("Hd"), "<msub><mi>H</mi><mi>d</mi></msub>");
  EXPECT_EQ(symbol_mathml("ks"), "<msub><mi>k</mi><mi>s</mi></msub>");
  EXPECT_EQ(symbol_mathml("D50"), "<msub><mi>D</mi><mn>50</mn></msub>");
  EXPECT_EQ(symbol_mathml("T_req"), "<msub><mi>T</mi><mtext>req</mtext></msub>");
  EXPECT_EQ(symbol_mathml("gamma_w"), "<msub><mi>γ</mi><mi>w</mi></msub>");
  EXPECT_EQ(symbol_mathml("C_theta"), "<msub><mi>C</mi><mi>θ</mi></msub>");
  EXPECT_THAT(symbol_mathml("dE"), HasSubstr("Δ</mi><mi>E</mi>"));
  EXPECT_THAT(symbol_mathml("dH"), HasSubstr("Δ</mi><mi>H</mi>"));
  EXPECT_THAT(symbol_mathml("number"), Not(HasSubstr("ν")));
  EXPECT_EQ(symbol_text("y1"), "y1");
  EXPECT_EQ(symbol_text("dE"), "ΔE");
  EXPECT_EQ(symbol_text("sigma"), "σ");
  EXPECT_EQ(symbol_text("gamma_w"), "γ_w");
}

TEST(MathMl, FractionsAndRootsHaveNoSuperfluousParentheses) {
  const std::string mathml = typeset("y = (a + b)/(c - d) + sqrt((a + b)) + ((a)) * b");
  EXPECT_THAT(
      mathml,
      HasSubstr("<mfrac><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mrow><mi>c</mi><mo>−</mo><mi>d</mi></mrow></mfrac>"));
  EXPECT_THAT(mathml, HasSubstr("<msqrt><mi>a</mi><mo>+</mo><mi>b</mi></msqrt>"));
  EXPECT_THAT(mathml, Not(HasSubstr("<mo>(</mo>")));
}

TEST(MathMl, NeededParenthesesStay) {
  for (const char* text : {"y = a*(b + c)", "y = (a + b)^2", "y = (a/b)^2", "y = (-a)^2", "y = a - (b - c)", "y = a - (b + c)",
                           "y = -(a + b)", "y = a + (-b)", "y = a*(-b)", "y = (a^b)^c", "y = (a*b)^2", "y = a + (-b)*c",
                           "y = sin(x)", "y = x^(a/b*c)", "y = x^(a/(b*c))"})
    EXPECT_THAT(typeset(text), HasSubstr("<mo>(</mo>")) << text;
  for (const char* text :
       {"y = a + (b + c)", "y = (a*b)*c", "y = a*(b*c)", "y = -(a*b)", "y = a^(b + c)", "y = (a/b)*c", "y = a - (b*c)"})
    EXPECT_THAT(typeset(text), Not(HasSubstr("<mo>(</mo>"))) << text;
}

TEST(MathMl, ProductsPowersAndNumbers) {
  EXPECT_THAT(typeset("y = 2*3"), HasSubstr("<mn>2</mn><mo>⋅</mo><mn>3</mn>"));
  EXPECT_THAT(typeset("y = 2*a"), Not(HasSubstr("⋅")));
  EXPECT_THAT(typeset("y = F1^2"), HasSubstr("<msubsup><mi>F</mi><mn>1</mn><mrow><mn>2</mn></mrow></msubsup>"));
  EXPECT_THAT(typeset("y = x^(2/3)"), HasSubstr("<mn>2</mn><mo lspace=\"0\" rspace=\"0\">/</mo><mn>3</mn>"));
  EXPECT_THAT(typeset("y = 1e-6*x"), HasSubstr("<msup><mn>10</mn><mrow><mo>−</mo><mn>6</mn></mrow></msup>"));
  EXPECT_THAT(typeset("y = tanh(x)"), HasSubstr("<mi>tanh</mi>"));
  EXPECT_THAT(typeset("y = max(a, b)"), HasSubstr("<mi>max</mi>"));
}

TEST(MathMl, BarsAreNestedTwiceAtMost) {
  const std::string mathml = typeset("y = 1/(2 + 3/(4 + 5/x))");
  EXPECT_THAT(mathml, HasSubstr("<mn>5</mn><mo lspace=\"0\" rspace=\"0\">/</mo><mi>x</mi>"));
  const auto first = mathml.find("<mfrac>");
  const auto second = mathml.find("<mfrac>", first + 1);
  EXPECT_NE(second, std::string::npos);
  EXPECT_EQ(mathml.find("<mfrac>", second + 1), std::string::npos);
}

TEST(MathMl, OneRowPerStatement) {
  const std::string mathml = typeset("F1 = V1/sqrt(g*y1); y2 = y1/2*(sqrt(1 + 8*F1^2) - 1)");
  EXPECT_EQ(mathml.rfind("<math display=\"block\">", 0), 0U);
  const auto first = mathml.find("<mtr>");
  ASSERT_NE(first, std::string::npos);
  EXPECT_NE(mathml.find("<mtr>", first + 1), std::string::npos);
  EXPECT_EQ(imbalance(mathml), "") << mathml;
}

TEST(MathMl, LongFormulasTakeTwoRows) {
  const auto rows = [](const std::string& mathml) {
    std::size_t count = 0;
    for (auto at = mathml.find("<mtr>"); at != std::string::npos; at = mathml.find("<mtr>", at + 1)) ++count;
    return count;
  };
  const std::string side = "q^2/(g*y1) + b*y1^2/2 + m*y1^3/3 + 1000000000 + 1000000000";
  EXPECT_EQ(rows(typeset("q^2/(g*yc^3) = 1")), 1U);
  EXPECT_EQ(rows(typeset(side + " = " + side)), 2U);
  const auto value = [](std::string_view name) -> std::string { return name == "y" ? "6.1 m" : ""; };
  EXPECT_EQ(rows(Expression::parse("y = a")->mathml_with_values(value)), 1U);
  EXPECT_EQ(rows(Expression::parse("y = " + side + "+" + side)->mathml_with_values(value)), 2U);
  EXPECT_EQ(imbalance(Expression::parse(side + "=" + side)->mathml_with_values(value)), "");
}

TEST(MathMl, WithValues) {
  const auto jump = Expression::parse("q = V1*y1; y2 = y1^2 + x*(-k)");
  const auto text_of = [](std::string_view name) -> std::string {
    if (name == "y1") return "0.6 m";
    if (name == "V1") return "18 500.5 ft/s";
    if (name == "k") return "-2";
    if (name == "y2") return "6.1 m";
    return "";
  };
  const std::string mathml = jump->mathml_with_values(text_of);
  EXPECT_EQ(imbalance(mathml), "") << mathml;
  EXPECT_THAT(mathml, HasSubstr("<mrow><mn>18 500.5</mn><mtext>\u00a0ft/s</mtext></mrow><mo>⋅</mo><mrow><mn>0.6</mn>"));
  EXPECT_THAT(mathml, HasSubstr("<msup><mrow><mo>(</mo><mrow><mn>0.6</mn><mtext>\u00a0m</mtext></mrow><mo>)</mo></mrow>"));
  EXPECT_THAT(mathml, HasSubstr("<mi>x</mi>"));  // without a value the symbol stays
  EXPECT_THAT(mathml, HasSubstr("<msub><mi>y</mi><mn>2</mn></msub>"));
  EXPECT_THAT(mathml, HasSubstr("<mo>=</mo><mrow><mn>6.1</mn><mtext>\u00a0m</mtext></mrow>"));
}

TEST(MathMl, ForeignTextIsEscaped) {
  const std::string mathml = Expression::parse("y = a*2")->mathml_with_values([](std::string_view) { return "3 <b>&m"; });
  EXPECT_EQ(imbalance(mathml), "") << mathml;
  EXPECT_THAT(mathml, HasSubstr("&lt;b&gt;&amp;m"));
}

TEST(MathMl, RandomTreesAreBalanced) {
  std::mt19937 random(7);
  const std::vector<std::string> pieces = {"a", "y1", "2", "1e-3",  "(",    ")",  "+",    "-",
                                           "*", "/",  "^", "sqrt(", "sin(", "dE", "max(", ","};
  int parsed_count = 0;
  for (int round = 0; round < 30000; ++round) {
    std::string text = "y = a";
    const auto count = 1 + random() % 8;
    for (unsigned i = 0; i < count; ++i) text += " " + pieces[random() % pieces.size()];
    const auto parsed = Expression::parse(text);
    if (!parsed) continue;
    ++parsed_count;
    EXPECT_EQ(imbalance(parsed->mathml()), "") << text;
  }
  EXPECT_GT(parsed_count, 300);
}

}  // namespace
}  // namespace quell
