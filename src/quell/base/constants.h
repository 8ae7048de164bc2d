// Physical constants of the whole engine, so that no file has its own.
#pragma once

namespace quell {

inline constexpr double gravity = 9.81;          ///< g, m/s2; the value of the handbooks quoted (9.80665 is standard gravity)
inline constexpr double water_density = 1000.0;  ///< rho, kg/m3
inline constexpr double water_viscosity = 1.004e-6;                   ///< nu, m2/s, fresh water at 20 degC
inline constexpr double water_unit_weight = water_density * gravity;  ///< N/m3
inline constexpr double surface_tension = 0.0728;                     ///< sigma, N/m, of water against air at 20 degC

}  // namespace quell
