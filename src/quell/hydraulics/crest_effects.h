// What lowers or limits the flow over an ogee crest: apron and tailwater below it, piers, the least pressure allowed on it.
//
// He is the total head above the crest, Hd the design head, m. Factors are without unit and apply to the free coefficient of
// crest.h. Sources: Design of small dams 1987, ch. 9; Novak et al. 2007; Collection of hydraulic formulae (JSCE 1985).
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct ApronInput {
  double He;                 ///< m, > 0
  double crest_above_apron;  ///< m, >= 0
};
/// Factor (0.77 to 1) for an apron close below the crest; within 2 %.
double apron_factor(const ApronInput& input) noexcept;

struct SubmergenceInput {
  double He;                 ///< m, > 0
  double fall_to_tailwater;  ///< hd: reservoir energy level less tailwater level, m, >= 0
};
/// Factor (0 to 1) for tailwater that reaches above the crest or near it; within 3 %.
double submergence_factor(const SubmergenceInput& input) noexcept;

/// What the flow does below the crest.
enum class FlowBelowCrest { supercritical, free_jump, drowned_jump, drowned_crest };

struct TailwaterFactorInput {
  double He;                 ///< m, > 0
  double crest_above_apron;  ///< m, >= 0
  double tailwater_depth;    ///< above the apron, m, >= 0
  FlowBelowCrest flow;
};
/// Factor for both effects: the apron alone below supercritical flow or a free jump, else apron and submergence together.
/// Tailwater above the reservoir's energy level gives 0.
double crest_tailwater_factor(const TailwaterFactorInput& input) noexcept;

struct NovakLengthInput {
  double clear_length;  ///< m, > 0
  double contractions;  ///< n, two for each pier
  double k;             ///< 0 to 0.09
  double H;             ///< head above the crest, m
};
/// b (m) = bc - k n H.
double effective_crest_length(const NovakLengthInput& input) noexcept;

struct HeadLimitInput {
  double Hd;    ///< m, > 0
  double hlim;  ///< m of water below atmosphere that the crest pressure may reach, >= 0
};
/// chi_max = He/Hd (without unit, >= 1) at which the least crest pressure head is -hlim.
double crest_head_ratio_limit(const HeadLimitInput& input) noexcept;

struct MultiBayInput {
  double n;   ///< number of bays, >= 1
  double B;   ///< clear width of a bay, m
  double H;   ///< head, m
  double Hd;  ///< design head, m
  double t;   ///< pier width, m
  double Sp;  ///< S': crest axis to the upstream end of the piers, m
  double xi;  ///< y/Hd of the crest profile at x/Hd = 0.5
};
struct MultiBayFlow {
  double Md;  ///< contraction by the piers
  double C;   ///< m^0.5/s
  double Q;   ///< m3/s
};
/// Discharge over a crest of several bays after Ishii and Fujimoto.
MultiBayFlow multi_bay_discharge(const MultiBayInput& input) noexcept;

namespace record {
extern const Method crest_apron_factor;
extern const Method crest_submergence_factor;
extern const Method effective_length_novak;
extern const Method crest_head_limit;
extern const Method crest_discharge_multi_bay;
}  // namespace record

}  // namespace quell::hydraulics
