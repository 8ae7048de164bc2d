#include <utility>

#include "quell/base/expression_node.h"
#include "quell/base/expression_symbol.h"

namespace quell {
namespace {

using Node = Expression::Node;
using Kind = Node::Kind;
using syntax::element;
using syntax::escaped;
using TextOf = std::function<std::string(std::string_view)>;

// How strongly a piece holds together; parentheses are set where less is offered than needed.
enum class Binding { sum, sign, product, fraction, power, atom };

struct Piece {
  std::string mathml;
  Binding binding = Binding::atom;
  bool starts_with_digit = false;
  bool ends_with_digit = false;
  bool ends_with_slash = false;  ///< "a/b": a factor that follows would seem to stand below the slash
};

constexpr std::string_view function_application = "<mo>\u2061</mo>";
constexpr std::string_view thin_product = "<mspace width=\"0.167em\"/><mo>\u2062</mo>";
constexpr std::string_view dot_product = "<mo>\u22c5</mo>";
constexpr std::string_view minus = "<mo>\u2212</mo>";

std::string row(std::string_view content) {
  return element("mrow", content);
}

std::string fenced(std::string_view open, std::string_view content, std::string_view close) {
  return row(element("mo", open).append(content).append(element("mo", close)));
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Bytes of the number at the front of "18 500 ft³/s" or "-1.2e-6 m²/s".
std::size_t number_length(std::string_view text) {
  std::size_t at = 0;
  const auto digit_at = [&](std::size_t i) { return i < text.size() && is_digit(text[i]); };
  const auto sign_at = [&](std::size_t i) { return i < text.size() && (text[i] == '-' || text[i] == '+'); };
  if (sign_at(0)) ++at;
  while (at < text.size()) {
    const bool exponent = text[at] == 'e' && (digit_at(at + 1) || (sign_at(at + 1) && digit_at(at + 2)));
    if (exponent)
      ++at;
    else if (!digit_at(at) && text[at] != '.' && !(text[at] == ' ' && digit_at(at + 1)))
      break;
    ++at;
  }
  return at;
}

// "1.2e-6" as 1.2 times a power of ten.
Piece number(std::string_view text) {
  const auto mark = text.find_first_of("eE");
  if (mark == std::string_view::npos) return {element("mn", text), Binding::atom, true, true};
  std::string_view exponent = text.substr(mark + 1);
  const bool negative = exponent.starts_with('-');
  if (negative || exponent.starts_with('+')) exponent.remove_prefix(1);
  while (exponent.size() > 1 && exponent.front() == '0') exponent.remove_prefix(1);
  std::string power = element("mn", exponent);
  if (negative) power = row(std::string(minus) + power);
  power = element("msup", "<mn>10</mn>" + power);
  const std::string_view mantissa = text.substr(0, mark);
  if (mantissa == "1") return {power, Binding::power, true, true};
  return {row(element("mn", mantissa).append(dot_product).append(power)), Binding::product, true, true};
}

Piece value_text(std::string_view text) {
  const bool negative = text.starts_with('-');
  const std::string_view whole = negative ? text.substr(1) : text;
  const std::size_t length = number_length(whole);
  Piece piece = length == 0 ? Piece{} : number(whole.substr(0, length));
  std::string_view unit = whole.substr(length);
  while (unit.starts_with(' ')) unit.remove_prefix(1);
  if (!unit.empty()) {
    const std::string_view gap = length == 0 ? "" : "\u00a0";
    piece.mathml = row(piece.mathml + element("mtext", std::string(gap) + escaped(unit)));
    piece.binding = Binding::product;
  }
  if (negative) piece = {row(std::string(minus) + piece.mathml), Binding::sign, false, true};
  return piece;
}

// Characters that a reader sees, counted roughly: formulas are not broken by browsers, so long ones are put on two rows.
std::size_t visible_length(std::string_view mathml) {
  std::size_t count = 0;
  bool in_tag = false;
  for (const char c : mathml) {
    if (c == '<') in_tag = true;
    if (!in_tag && (static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++count;
    if (c == '>') in_tag = false;
  }
  return count;
}

constexpr std::size_t longest_row = 80;
constexpr int slash_level = 2;  // bars inside bars, counted from the outermost; exponents begin here

// Chromium reads the alignment from the style, other readers from the attribute of the table.
std::string table_row(std::string_view left, std::string_view right) {
  return "<mtr><mtd style=\"text-align:right;padding-right:0\">" + row(left) +
         "</mtd><mtd style=\"text-align:left;padding-left:0\">" + row("<mo form=\"infix\">=</mo>" + std::string(right)) +
         "</mtd></mtr>";
}

class Typesetter {
 public:
  explicit Typesetter(const TextOf* text_of) : text_of_(text_of) {}

  std::string statement(const Node& node) const {
    const Node& target = *node.parts[0];
    const std::string right = piece(*node.parts[1]).mathml;
    if (target.kind != Kind::name) {
      const std::string left = piece(target).mathml;
      if (visible_length(left) + visible_length(right) <= longest_row) return table_row(left, right);
      return "<mtr><mtd columnspan=\"2\" style=\"text-align:left\">" + row(left) + "</mtd></mtr>" + table_row("", right);
    }
    const std::string left = symbol_mathml(target.text);
    const std::string text = text_of(target.text);
    const std::string result = text.empty() ? "" : value_text(text).mathml;
    if (result.empty() || result == right) return table_row(left, right);  // "y2 = 2 m" needs no second "= 2 m"
    if (visible_length(right) > longest_row) return table_row(left, right) + table_row("", result);
    return table_row(left, right + "<mo>=</mo>" + result);
  }

 private:
  std::string text_of(std::string_view name) const { return text_of_ == nullptr ? std::string() : (*text_of_)(name); }

  std::string inside(const Node& node, Binding needed, int level = 0) const {
    const Piece content = piece(node, level);
    return content.binding < needed ? fenced("(", content.mathml, ")") : content.mathml;
  }

  Piece piece(const Node& node, int level = 0) const {
    switch (node.kind) {
      case Kind::number: return number(node.text);
      case Kind::name: return name(node);
      case Kind::negative: return {row(std::string(minus) + inside(*node.parts[0], Binding::product, level)), Binding::sign};
      case Kind::sum: return sum(node, "<mo>+</mo>", level);
      case Kind::difference: return sum(node, minus, level);
      case Kind::product: return product(node, level);
      case Kind::quotient: return quotient(node, level);
      case Kind::power: return power(node, level);
      case Kind::call: return call(node, level);
      case Kind::curve: return curve(node, level);
      case Kind::equation: break;
    }
    return {};
  }

  Piece name(const Node& node) const {
    const std::string text = text_of(node.text);
    return text.empty() ? Piece{symbol_mathml(node.text)} : value_text(text);
  }

  Piece sum(const Node& node, std::string_view sign, int level) const {
    const Binding needed = node.kind == Kind::difference ? Binding::product : Binding::sum;
    const Piece right = piece(*node.parts[1], level);
    const bool fence = right.binding < needed || right.binding == Binding::sign;
    return {piece(*node.parts[0], level).mathml + std::string(sign) + (fence ? fenced("(", right.mathml, ")") : right.mathml),
            Binding::sum};
  }

  Piece product(const Node& node, int level) const {
    Piece left = piece(*node.parts[0], level);
    Piece right = piece(*node.parts[1], level);
    if (left.binding < Binding::sign || left.ends_with_slash) left = {fenced("(", left.mathml, ")")};
    if (right.binding < Binding::product) right = {fenced("(", right.mathml, ")")};
    const bool dot = right.starts_with_digit || (text_of_ != nullptr && left.ends_with_digit);
    const Binding binding = left.binding == Binding::sign ? Binding::sign : Binding::product;
    return {left.mathml + std::string(dot ? dot_product : thin_product) + right.mathml, binding, left.starts_with_digit,
            right.ends_with_digit, right.ends_with_slash};
  }

  // A bar; a slash where the digits would become too small.
  Piece quotient(const Node& node, int level) const {
    if (level >= slash_level) {
      return {row(inside(*node.parts[0], Binding::sign, level) + "<mo lspace=\"0\" rspace=\"0\">/</mo>" +
                  inside(*node.parts[1], Binding::fraction, level)),
              Binding::product, false, false, true};
    }
    const Piece above = piece(*node.parts[0], level + 1);
    const Piece below = piece(*node.parts[1], level + 1);
    const bool digits = above.starts_with_digit || below.starts_with_digit;
    return {element("mfrac", row(above.mathml) + row(below.mathml)), Binding::fraction, digits, digits};
  }

  Piece power(const Node& node, int level) const {
    const std::string exponent = row(piece(*node.parts[1], slash_level).mathml);
    const Node& base = *node.parts[0];
    if (base.kind == Kind::name && text_of(base.text).empty()) {
      const auto parts = syntax::symbol_parts(base.text);
      if (!parts.subscript.empty()) return {element("msubsup", parts.base + parts.subscript + exponent), Binding::power};
    }
    const Piece below = piece(base, level);
    const std::string fenced_base = below.binding < Binding::atom ? fenced("(", below.mathml, ")") : below.mathml;
    return {element("msup", fenced_base + exponent), Binding::power, below.starts_with_digit && below.binding == Binding::atom,
            true};
  }

  std::string arguments(const Node& node, int level) const {
    std::string list;
    for (const auto& part : node.parts) {
      if (!list.empty()) list += "<mo separator=\"true\">,</mo>";
      list += piece(*part, level).mathml;
    }
    return list;
  }

  Piece call(const Node& node, int level) const {
    const std::string list = arguments(node, level);
    if (node.text == "sqrt") return {element("msqrt", list)};
    if (node.text == "abs") return {fenced("|", list, "|")};
    if (node.text == "ceil") return {fenced("⌈", list, "⌉")};
    if (node.text == "floor") return {fenced("⌊", list, "⌋")};
    if (node.text == "log10") return applied("<msub><mi>log</mi><mn>10</mn></msub>", list);
    return applied(element("mi", node.function->printed), list);
  }

  Piece curve(const Node& node, int level) const {
    std::string_view place = node.curve->place.substr(0, node.curve->place.find_first_of(",;("));
    while (place.ends_with(' ')) place.remove_suffix(1);
    if (place.empty() || place.size() > 24) place = node.curve->id;
    const std::string letter = "<mi mathvariant=\"normal\">f</mi>";
    return applied(element("msub", letter + element("mtext", escaped(place))), arguments(node, level));
  }

  static Piece applied(const std::string& function, const std::string& list) {
    return {row(function + std::string(function_application) + fenced("(", list, ")"))};
  }

  const TextOf* text_of_;
};

std::string table(const std::vector<Node::Pointer>& statements, const TextOf* text_of) {
  const Typesetter typesetter(text_of);
  std::string rows;
  for (const auto& statement : statements) rows += typesetter.statement(*statement);
  return "<math display=\"block\"><mtable displaystyle=\"true\" columnalign=\"right left\">" + rows + "</mtable></math>";
}

}  // namespace

std::string Expression::mathml() const {
  return table(statements_, nullptr);
}

std::string Expression::mathml_with_values(const TextOf& text_of) const {
  return table(statements_, text_of ? &text_of : nullptr);
}

}  // namespace quell
