#include <locale>
#include <sstream>
#include <utility>

#include "quell/base/expression_node.h"

namespace quell {
namespace {

using Node = Expression::Node;
using Kind = Node::Kind;
using Parsed = tl::expected<Node::Pointer, ExpressionError>;

constexpr std::size_t longest_text = 10000;  // together with the depth this bounds every recursion over the tree
constexpr int deepest = 100;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool starts_name(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
}

class Parser {
 public:
  explicit Parser(std::string_view text) : text_(text) {}

  tl::expected<std::vector<Node::Pointer>, ExpressionError> statements() {
    if (text_.size() > longest_text) return fail("the text is too long");
    std::vector<Node::Pointer> list;
    while (peek() != '\0' || at_ < text_.size()) {
      auto statement = equation();
      if (!statement) return tl::unexpected<ExpressionError>(statement.error());
      list.push_back(*statement);
      if (!take(';') && at_ < text_.size()) return fail("an operator or ';' is expected");
    }
    if (list.empty()) return fail("an equation is expected");
    return list;
  }

 private:
  tl::unexpected<ExpressionError> fail(std::string message) const {
    return tl::unexpected<ExpressionError>(ExpressionError{at_, std::move(message)});
  }

  char peek() {
    while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\n' || text_[at_] == '\t')) ++at_;
    return at_ < text_.size() ? text_[at_] : '\0';
  }

  bool take(char expected) {
    if (peek() != expected || at_ >= text_.size()) return false;
    ++at_;
    return true;
  }

  static Node::Pointer join(Kind kind, std::size_t position, std::vector<Node::Pointer> parts) {
    Node node;
    node.kind = kind;
    node.position = position;
    node.parts = std::move(parts);
    return std::make_shared<const Node>(std::move(node));
  }

  Parsed equation() {
    peek();
    const std::size_t start = at_;
    const auto left = sum();
    if (!left) return left;
    if (!take('=')) return fail("'=' is expected: a statement is 'name = expression'");
    const auto right = sum();
    if (!right) return right;
    return join(Kind::equation, start, {*left, *right});
  }

  Parsed sum() { return chain('+', Kind::sum, '-', Kind::difference, &Parser::product); }
  Parsed product() { return chain('*', Kind::product, '/', Kind::quotient, &Parser::signed_power); }

  Parsed chain(char first, Kind first_kind, char second, Kind second_kind, Parsed (Parser::*operand)()) {
    auto left = (this->*operand)();
    while (left && (peek() == first || peek() == second)) {
      const std::size_t position = at_;
      const Kind kind = text_[at_++] == first ? first_kind : second_kind;
      const auto right = (this->*operand)();
      if (!right) return right;
      left = join(kind, position, {*left, *right});
    }
    return left;
  }

  Parsed signed_power() {
    if (++depth_ > deepest) return fail("the expression is nested too deeply");
    Parsed result;
    const char sign = peek();
    const std::size_t position = at_;
    if (sign == '-' || sign == '+') {
      ++at_;
      result = signed_power();
      if (result && sign == '-') result = join(Kind::negative, position, {*result});
    } else {
      result = power();
    }
    --depth_;
    return result;
  }

  Parsed power() {
    const auto base = primary();
    if (!base || peek() != '^') return base;
    const std::size_t position = at_++;
    const auto exponent = signed_power();
    if (!exponent) return exponent;
    return join(Kind::power, position, {*base, *exponent});
  }

  Parsed primary() {
    const char c = peek();
    if (take('(')) {
      const auto inner = sum();
      if (inner && !take(')')) return fail("')' is expected");
      return inner;
    }
    if (is_digit(c) || c == '.') return number();
    if (starts_name(c)) return name_or_call();
    if (at_ >= text_.size()) return fail("the expression ends too early");
    return fail("a number, a name or '(' is expected");
  }

  void skip_digits() {
    while (at_ < text_.size() && is_digit(text_[at_])) ++at_;
  }

  Parsed number() {
    const std::size_t start = at_;
    skip_digits();
    if (at_ < text_.size() && text_[at_] == '.') ++at_;
    skip_digits();
    if (at_ < text_.size() && (text_[at_] == 'e' || text_[at_] == 'E')) {
      const std::size_t mark = at_++;
      if (at_ < text_.size() && (text_[at_] == '-' || text_[at_] == '+')) ++at_;
      if (at_ >= text_.size() || !is_digit(text_[at_])) at_ = mark;
      skip_digits();
    }
    Node node;
    node.position = start;
    node.text = std::string(text_.substr(start, at_ - start));
    std::istringstream stream(node.text);
    stream.imbue(std::locale::classic());
    if (!(stream >> node.value) || !stream.eof()) {
      at_ = start;
      return fail("this is not a number");
    }
    return std::make_shared<const Node>(std::move(node));
  }

  Parsed name_or_call() {
    Node node;
    node.kind = Kind::name;
    node.position = at_;
    while (at_ < text_.size() && (starts_name(text_[at_]) || is_digit(text_[at_]))) node.text += text_[at_++];
    if (peek() != '(') return std::make_shared<const Node>(std::move(node));
    return call(std::move(node));
  }

  Parsed call(Node node) {
    node.function = syntax::find_function(node.text);
    node.curve = node.function == nullptr ? find_curve(node.text) : nullptr;
    node.kind = node.curve != nullptr ? Kind::curve : Kind::call;
    if (node.function == nullptr && node.curve == nullptr) {
      at_ = node.position;
      return fail("unknown function '" + node.text + "'");
    }
    take('(');
    do {
      const auto argument = sum();
      if (!argument) return argument;
      node.parts.push_back(*argument);
    } while (take(','));
    if (!take(')')) return fail("')' or ',' is expected");
    const bool several = node.function != nullptr && node.function->fold != nullptr;
    if (several != (node.parts.size() > 1)) {
      at_ = node.position;
      return fail("'" + node.text + "' takes " + (several ? "two or more arguments" : "one argument"));
    }
    return std::make_shared<const Node>(std::move(node));
  }

  std::string_view text_;
  std::size_t at_ = 0;
  int depth_ = 0;
};

}  // namespace

tl::expected<Expression, ExpressionError> Expression::parse(std::string_view text) {
  auto statements = Parser(text).statements();
  if (!statements) return tl::unexpected<ExpressionError>(statements.error());
  Expression expression;
  expression.statements_ = std::move(*statements);
  return expression;
}

}  // namespace quell
