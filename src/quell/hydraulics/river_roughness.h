// Manning's n of rivers: from the grains of the bed, from slope and radius, by adding up what disturbs the flow, and from a
// table.
//
// Grain sizes in m. Grains alone give the lower bound of n at flood stage, which suits the lowest tailwater. n is rarely known
// better than 15 to 20 %: carry a low, an expected and a high value.
#pragma once

#include <span>
#include <string_view>

#include "quell/base/method.h"

namespace quell::hydraulics {

/// n = d^(1/6)/C, Strickler. C = 21.1 with d50; 26 with d90. d > 0.
double roughness_of_grains(double d, double C) noexcept;
inline constexpr double strickler_d50 = 21.1;
inline constexpr double strickler_d90 = 26.0;

struct LimerinosInput {
  double R;         ///< hydraulic radius, m, > 0
  double d;         ///< d84, or the weighted size 0.6 d84 + 0.3 d50 + 0.1 d16, m, > 0
  double c = 1.16;  ///< 1.16 with d84; 0.90 with the weighted size
};
/// n = 0.113 R^(1/6)/(c + 2 log10(R/d)): gravel streams, high flow within the banks, bed at rest.
Outcome<double> roughness_limerinos(const LimerinosInput& input);

struct JarrettInput {
  double R;      ///< hydraulic radius, m, 0.15 to 2.13
  double slope;  ///< of the energy line, 0.002 to 0.04; refused above 0.052
};
/// n = 0.32 S^0.38 R^-0.16: mountain streams.
Outcome<double> roughness_jarrett(const JarrettInput& input);

struct DingmanSharmaInput {
  double A;      ///< area, m2, > 0
  double R;      ///< hydraulic radius, m, > 0
  double slope;  ///< of the surface, > 0
};
/// Q (m3/s) = 1.564 A^1.173 R^0.400 S^(-0.0543 log10 S), without any n: natural reaches within their banks.
double discharge_dingman_sharma(const DingmanSharmaInput& input) noexcept;

struct CowanInput {
  double n0;  ///< of the bed material: earth 0.020, cut rock 0.025, fine gravel 0.024, coarse gravel 0.028
  double n1;  ///< irregularity: 0, 0.005, 0.010, 0.020
  double n2;  ///< change of section: 0, 0.005, 0.010 to 0.015
  double n3;  ///< obstructions: 0, 0.010 to 0.015, 0.020 to 0.030, 0.040 to 0.060
  double n4;  ///< vegetation: 0.005 to 0.010, 0.010 to 0.025, 0.025 to 0.050, 0.050 to 0.100
  double m5;  ///< meandering: 1.00, 1.15, 1.30
};
/// n = (n0 + n1 + n2 + n3 + n4) m5.
double roughness_cowan(const CowanInput& input) noexcept;

/// One row of the table of n, s/m^(1/3).
struct ManningRow {
  std::string_view channel;
  double lowest;
  double normal;  ///< 0 where the source gives none
  double highest;
  Provenance provenance;
};
/// Chow 1959, table 5-6, the rows that matter for rivers and their works.
std::span<const ManningRow> manning_table() noexcept;

namespace record {
extern const Method river_roughness_strickler;
extern const Method river_roughness_limerinos;
extern const Method river_roughness_jarrett;
extern const Method river_discharge_dingman_sharma;
extern const Method river_roughness_cowan;
extern const Method river_roughness_riprap;
extern const Method river_roughness_riprap_em1601;
}  // namespace record

}  // namespace quell::hydraulics
