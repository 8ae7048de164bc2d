// How results are printed: decimals by kind of quantity, in one place for report, figures and terminal.
#pragma once

#include <string>
#include <string_view>

#include "quell/base/finding.h"
#include "quell/base/units.h"

namespace quell::output {

/// Text for XML and HTML, in element content and in quoted attributes. Control characters that XML forbids are dropped.
std::string escape_xml(std::string_view text);

/// Characters that `text` takes in a terminal, counted as code points.
std::size_t display_width(std::string_view text);

/// Prints SI values in one unit system. A value that is not finite prints as a dash, so that no output ever says "nan".
/// Digits follow the job: levels 2 decimals, small depths 3, discharges no more than 1.
class Printer {
 public:
  constexpr explicit Printer(UnitSystem units) : units_(units) {}
  UnitSystem units() const { return units_; }

  std::string level(double si) const;      ///< "412.53"
  std::string depth(double si) const;      ///< "0.914", "12.35"
  std::string size(double si) const;       ///< building dimension: millimetres in m, hundredths in ft
  std::string discharge(double si) const;  ///< "1240", "86.4"
  std::string discharge(double si,
                        double smallest) const;  ///< for a column that starts at `smallest`: the same decimals all the way
  std::string velocity(double si) const;         ///< "24.3"
  std::string volume(double si) const;           ///< "1850"
  std::string ratio(double value) const;         ///< "8.13", no unit
  std::string number(double si, Dimension dimension, int significant = 4) const;
  std::string quantity(double si, Dimension dimension, int significant = 4) const;  ///< number and unit

  std::string grain(double si) const;  ///< size of sand or stone with its unit: "0.85 mm", "0.420 m"

  std::string measured(double si, Dimension dimension) const;  ///< number and unit as findings have them
  std::string value_of(const Finding& finding) const;          ///< a count without decimals
  std::string limit_of(const Finding& finding) const;
  /// For workings: `significant` digits, but a number that is short by itself stays short ("40", not "40.000").
  std::string worked(double si, Dimension dimension, int significant) const;

  std::string words(std::string_view text) const;  ///< a sentence of the engine with its quantity tokens put in

  std::string length_unit() const { return unit_label(dimension::length, units_); }
  std::string discharge_unit() const { return unit_label(dimension::discharge, units_); }
  std::string velocity_unit() const { return unit_label(dimension::velocity, units_); }
  std::string volume_unit() const { return unit_label(dimension::volume, units_); }

  /// The printed number with its unit behind a narrow no-break space.
  std::string with_unit(const std::string& number, const std::string& unit) const;

 private:
  UnitSystem units_;
  std::string fixed(double si, Dimension dimension, int decimals) const;
};

}  // namespace quell::output
