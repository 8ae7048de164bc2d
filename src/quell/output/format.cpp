#include "quell/output/format.h"

#include <cmath>

#include "quell/base/quantity_text.h"

namespace quell::output {

namespace {

constexpr std::string_view dash = "–";
constexpr std::string_view minus = "−";
constexpr std::string_view unit_gap = "\u202f";

/// A hyphen in front of a number becomes a minus sign; "-0.00" loses it.
std::string with_minus(std::string text) {
  if (text.empty() || text.front() != '-') return text;
  text.erase(0, 1);
  const bool zero = text.find_first_not_of("0.") == std::string::npos;
  return zero ? text : std::string(minus) + text;
}

int discharge_decimals(double printed) {
  const double size = std::abs(printed);
  return size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2;
}

}  // namespace

std::string escape_xml(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&': out += "&amp;"; break;
      case '<': out += "&lt;"; break;
      case '>': out += "&gt;"; break;
      case '"': out += "&quot;"; break;
      case '\'': out += "&#39;"; break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20 || c == '\n' || c == '\t') out += c;
    }
  }
  return out;
}

std::size_t display_width(std::string_view text) {
  std::size_t width = 0;
  for (const char c : text)
    if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) ++width;
  return width;
}

std::string Printer::fixed(double si, Dimension dimension, int decimals) const {
  if (!std::isfinite(si)) return std::string(dash);
  return with_minus(format_fixed(si, dimension, units_, decimals));
}

std::string Printer::level(double si) const {
  return fixed(si, dimension::length, 2);
}

std::string Printer::depth(double si) const {
  return fixed(si, dimension::length, std::abs(si) < 0.9995 ? 3 : 2);
}

namespace {
/// Too small for the decimals of a length in metres or feet.
bool is_grain(double si) {
  return std::abs(si) >= 1e-6 && std::abs(si) < 0.01;
}
}  // namespace

std::string Printer::size(double si) const {
  return fixed(si, dimension::length, units_ == UnitSystem::si ? 3 : 2);
}

std::string Printer::discharge(double si) const {
  return fixed(si, dimension::discharge, discharge_decimals(to_unit(si, dimension::discharge, units_)));
}

std::string Printer::discharge(double si, double smallest) const {
  const double printed = std::abs(to_unit(smallest, dimension::discharge, units_));
  return fixed(si, dimension::discharge, printed >= 9.95 ? 0 : printed >= 0.995 ? 1 : 2);
}

std::string Printer::grain(double si) const {
  if (!(std::abs(si) < 0.1)) return with_unit(size(si), length_unit());
  const double inch = 0.0254;
  const bool metric = units_ == UnitSystem::si;
  return with_unit(format_number(si / (metric ? 0.001 : inch), dimension::none, units_, 3), metric ? "mm" : "in");
}

std::string Printer::measured(double si, Dimension dimension) const {
  if (si == 0.0) return with_unit("0", unit_label(dimension, units_));
  if (dimension == quell::dimension::length) return is_grain(si) ? grain(si) : with_unit(depth(si), length_unit());
  if (dimension == quell::dimension::discharge) return with_unit(discharge(si), discharge_unit());
  if (dimension == quell::dimension::volume) return with_unit(volume(si), volume_unit());
  return quantity(si, dimension, dimension == quell::dimension::none ? 3 : 4);
}

std::string Printer::value_of(const Finding& finding) const {
  return finding.is_count ? fixed(finding.value, dimension::none, 0) : measured(finding.value, finding.dimension);
}

std::string Printer::limit_of(const Finding& finding) const {
  return finding.is_count ? fixed(finding.limit, dimension::none, 0) : measured(finding.limit, finding.dimension);
}

std::string Printer::worked(double si, Dimension dimension, int significant) const {
  const std::string shown = number(si, dimension, significant);
  const std::string short_form = without_zeros(shown);
  const bool exact = short_form == without_zeros(number(si, dimension, 9));
  return with_unit(exact ? short_form : shown, unit_label(dimension, units_));
}

std::string Printer::velocity(double si) const {
  return fixed(si, dimension::velocity, to_unit(std::abs(si), dimension::velocity, units_) >= 9.995 ? 1 : 2);
}

std::string Printer::volume(double si) const {
  return fixed(si, dimension::volume, to_unit(std::abs(si), dimension::volume, units_) >= 99.5 ? 0 : 1);
}

std::string Printer::ratio(double value) const {
  return fixed(value, dimension::none, 2);
}

std::string Printer::number(double si, Dimension dimension, int significant) const {
  if (!std::isfinite(si)) return std::string(dash);
  return with_minus(format_number(si, dimension, units_, significant));
}

std::string Printer::quantity(double si, Dimension dimension, int significant) const {
  return with_unit(number(si, dimension, significant), unit_label(dimension, units_));
}

std::string Printer::words(std::string_view text) const {
  return with_units(text, [this](const ToldQuantity& one) {
    if (one.significant == 0) return measured(one.value, one.dimension);
    const auto [number, unit] = round_figure(one, units_);
    return with_unit(with_minus(number), unit);
  });
}

std::string Printer::with_unit(const std::string& number, const std::string& unit) const {
  return unit.empty() ? number : number + std::string(unit_gap) + unit;
}

}  // namespace quell::output
