// Short rules of buckets, aprons and banks: velocity and head by a coefficient, the solid roller bucket, the
// length of a plain apron, riprap on a bank.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

/// V (m/s) = phi sqrt(2 g H): velocity at the toe below a head H (m, >= 0), phi its share of the ideal one.
double velocity_from_head(double phi, double H) noexcept;

/// H (m) = (q/C)^(2/3) from q = C H^1.5; q m2/s, C m^0.5/s, both > 0.
double weir_head(double q, double C) noexcept;

/// Least radius (m) of a solid roller bucket: H1 (0.0826 + 2.07e-3 FD + 1.4e-5 FD^2), FD = 1000 q/sqrt(g H1^3); H1 (m, > 0) is
/// the reservoir level above the invert of the bucket.
double roller_bucket_radius(double q, double H1) noexcept;

struct BankRiprapInput {
  double V;      ///< mean velocity of the channel, m/s, >= 0
  double d;      ///< mean depth of the channel, m, > 0
  double theta;  ///< angle of the bank to the horizontal, rad, < phi
  double phi;    ///< angle of repose of the stone, rad
};
/// K1 = sqrt(1 - sin^2 theta/sin^2 phi).
double bank_angle_factor(double theta, double phi) noexcept;
/// D50 (m) = 0.00594 V^3/(sqrt(d) K1^1.5): stone of specific gravity 2.65, stability factor 1.2.
double bank_riprap(const BankRiprapInput& input) noexcept;

namespace record {
extern const Method velocity_from_head;
extern const Method weir_head;
extern const Method roller_bucket_radius;
extern const Method apron_length_rise;
extern const Method bank_riprap;
}  // namespace record

}  // namespace quell::hydraulics
