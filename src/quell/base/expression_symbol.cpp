#include "quell/base/expression_symbol.h"

#include <algorithm>

#include "quell/base/expression.h"

namespace quell {
namespace {

struct GreekLetter {
  std::string_view name;
  std::string_view letter;
};

constexpr GreekLetter letters[] = {{"alpha", "α"}, {"beta", "β"},  {"gamma", "γ"}, {"delta", "δ"}, {"epsilon", "ε"},
                                   {"zeta", "ζ"},  {"eta", "η"},   {"theta", "θ"}, {"kappa", "κ"}, {"lambda", "λ"},
                                   {"mu", "μ"},    {"nu", "ν"},    {"xi", "ξ"},    {"pi", "π"},    {"rho", "ρ"},
                                   {"sigma", "σ"}, {"tau", "τ"},   {"phi", "φ"},   {"chi", "χ"},   {"psi", "ψ"},
                                   {"omega", "ω"}, {"Gamma", "Γ"}, {"Delta", "Δ"}, {"Theta", "Θ"}, {"Lambda", "Λ"},
                                   {"Pi", "Π"},    {"Sigma", "Σ"}, {"Phi", "Φ"},   {"Psi", "Ψ"},   {"Omega", "Ω"}};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_lower(char c) {
  return c >= 'a' && c <= 'z';
}
bool is_upper(char c) {
  return c >= 'A' && c <= 'Z';
}

// "nu" and "nu_t" begin with a Greek letter, "number" does not.
const GreekLetter* leading_letter(std::string_view name) {
  for (const auto& greek : letters)
    if (name.starts_with(greek.name) && (name.size() == greek.name.size() || !is_lower(name[greek.name.size()]))) return &greek;
  return nullptr;
}

// "dE" and "dH" are differences; "D50" and "dx" are not.
bool is_difference(std::string_view name) {
  return name.size() > 1 && name[0] == 'd' && is_upper(name[1]);
}

std::string subscript_of(std::string_view rest) {
  if (rest.starts_with('_')) rest.remove_prefix(1);
  if (rest.empty()) return "";
  if (const auto* greek = leading_letter(rest); greek != nullptr && greek->name == rest)
    return syntax::element("mi", greek->letter);
  if (std::all_of(rest.begin(), rest.end(), is_digit)) return syntax::element("mn", rest);
  if (rest.size() == 1) return syntax::element("mi", syntax::escaped(rest));
  std::string words(rest);
  std::replace(words.begin(), words.end(), '_', ',');
  return syntax::element("mtext", syntax::escaped(words));
}

}  // namespace

namespace syntax {

std::string escaped(std::string_view text) {
  std::string result;
  for (const char c : text) {
    switch (c) {
      case '&': result += "&amp;"; break;
      case '<': result += "&lt;"; break;
      case '>': result += "&gt;"; break;
      case '"': result += "&quot;"; break;
      default: result += c;
    }
  }
  return result;
}

std::string element(std::string_view tag, std::string_view content) {
  std::string result;
  result.append("<").append(tag).append(">").append(content).append("</").append(tag).append(">");
  return result;
}

SymbolParts symbol_parts(std::string_view name) {
  if (name.empty()) return {element("mi", ""), ""};
  if (const auto* greek = leading_letter(name)) {
    const std::string base =
        is_upper(name[0]) ? "<mi mathvariant=\"normal\">" + std::string(greek->letter) + "</mi>" : element("mi", greek->letter);
    return {base, subscript_of(name.substr(greek->name.size()))};
  }
  if (is_difference(name)) {
    const SymbolParts inner = symbol_parts(name.substr(1));
    return {element("mrow", "<mi mathvariant=\"normal\">Δ</mi>" + inner.base), inner.subscript};
  }
  return {element("mi", escaped(name.substr(0, 1))), subscript_of(name.substr(1))};
}

}  // namespace syntax

std::string symbol_mathml(std::string_view name) {
  const auto parts = syntax::symbol_parts(name);
  return parts.subscript.empty() ? parts.base : syntax::element("msub", parts.base + parts.subscript);
}

std::string symbol_text(std::string_view name) {
  if (const auto* greek = leading_letter(name))
    return std::string(greek->letter) + std::string(name.substr(greek->name.size()));
  if (is_difference(name)) return "Δ" + symbol_text(name.substr(1));
  return std::string(name);
}

}  // namespace quell
