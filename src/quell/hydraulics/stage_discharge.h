// Stage and discharge of a river gauge: the power law Q = a (h - h0)^b, its fit to gaugings, how far it may be trusted, and its
// corrections for backwater and for a passing flood.
//
// h is the level of the water and h0 the level of no flow, m; Q in m3/s; a in m^(3-b)/s. b is about 1.5 for a weir, 5/3 for a
// wide channel, 2 to 2.7 for a narrow one; above 3.5 the zero is wrong or the control changes. One law holds for one control:
// fit the river within its banks and above them apart.
#pragma once

#include <span>
#include <string_view>

#include "quell/base/method.h"

namespace quell::hydraulics {

struct StageRating {
  double a;                                       ///< > 0
  double h0;                                      ///< m
  double b;                                       ///< > 0
  double discharge(double level) const noexcept;  ///< m3/s; 0 at and below h0
  double level(double discharge) const noexcept;  ///< m; discharge >= 0
};

struct GaugedPoint {
  double level;      ///< m
  double discharge;  ///< m3/s, > 0
};

struct RatingFit {
  StageRating rating;
  double standard_error;  ///< of ln Q: 0.05 is about 5 % of Q; with three parameters taken from the points
  int points;
  GaugedPoint lowest;
  GaugedPoint highest;
  double mean_log_depth;    ///< of ln(h - h0)
  double spread_log_depth;  ///< sum of the squares about that mean

  /// Standard deviation (m) of the level at a discharge (> 0): scatter of a single gauging and error of the line, with h0 taken
  /// as known. It grows away from the gaugings.
  double level_spread(double discharge) const noexcept;

  /// Why the law is not to be trusted at this discharge; empty where nothing speaks against it.
  std::string_view doubt(double discharge) const noexcept;
};

/// Least squares of ln Q: regression of ln Q on ln(h - h0) inside a search for h0 below the lowest level. Four gaugings at
/// least, at two levels or more; no answer where no h0 is best, for then the points follow no power law.
Outcome<RatingFit> fit_rating(std::span<const GaugedPoint> points);

struct ThreeLevels {
  double h1;  ///< m, at Q1
  double h2;  ///< m, at sqrt(Q1 Q3)
  double h3;  ///< m, at Q3
};
/// h0 (m) = (h1 h3 - h2^2)/(h1 + h3 - 2 h2): exact for a power law; h1 < h2 < h3, h2 below their mean.
Outcome<double> rating_zero(const ThreeLevels& levels);

struct BackwaterFall {
  double Qr;  ///< discharge of the rating at the same level, m3/s
  double F;   ///< fall to the second gauge, m, >= 0
  double Fr;  ///< fall for which the rating holds, m, > 0
};
/// Q (m3/s) = Qr sqrt(F/Fr) where a backwater reaches the gauge.
double fall_discharge(const BackwaterFall& input) noexcept;

struct RatingLoop {
  double rise;   ///< dh/dt, m/s, rising > 0
  double c;      ///< speed of the flood wave, m/s, > 0: about 5/3 of the velocity in a wide river
  double slope;  ///< S0, > 0
};
/// Q over the discharge of steady flow at the same level: sqrt(1 + rise/(c S0)), Jones. On the rise the same discharge comes at
/// a LOWER level than the steady rating says.
Outcome<double> loop_factor(const RatingLoop& input);

namespace record {
extern const Method rating_discharge;
extern const Method rating_level;
extern const Method rating_fit;
extern const Method rating_zero;
extern const Method rating_fall;
extern const Method rating_loop;
extern const Method rating_conveyance;
}  // namespace record

}  // namespace quell::hydraulics
