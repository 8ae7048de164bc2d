// Choices between published rules for a dissipator, and the few sizes that a designer sets. Where standards disagree the
// conservative rule is the default, and a finding says which was used.
#pragma once

namespace quell::site {

struct BasinChoices {
  double invert_curve = 5.0;  ///< smallest radius of the curve at the chute's foot over the depth there; 4 is published too

  bool type_1_long = true;    ///< six sequent depths below F1 = 2.5; otherwise the length of the free jump
  bool type_2_full = true;    ///< 1.05 sequent depths; otherwise 5 % above sweep-out, never below the sequent depth
  bool saf_reserve = true;    ///< 5 % of the sequent depth on top of the published tailwater
  double saf_flare = 0.0;     ///< tan of the flare per side of the flared SAF basin; 0: the largest allowed
  bool flared_larger = true;  ///< flared SAF: the larger of the rectangular and the radial sequent depth; otherwise the radial
  int baffle_rows = 2;        ///< rows of baffles of the end-sill basin: 0, 1 or 2
  bool baffled_full = true;   ///< end-sill basin: full sequent depth; otherwise 0.85 of it, accepted with two rows
  double apron_slope = 0.10;  ///< tan(phi) of the sloping apron, 0.02 to 0.30
  double apron_share = 1.0;   ///< built length of the sloping apron over that of its jump; 0.6 is usual on rock
  bool impact_wide = true;    ///< impact basin: width by the square jet; otherwise the narrower by the equivalent depth
  double drop_block_height = 0.9;  ///< block height of the baffled apron over critical depth; 0.8 is published for spillways
  double roller_lip_angle = 0.7853981633974483;  ///< rad, lip of the solid roller bucket
  double flip_lip_angle = 0.5235987755982988;    ///< rad, lip of the flip bucket
  double flip_clearance = 1.0;                   ///< m, lip of the flip bucket above the highest tailwater
  double rock_block_size = 0.25;                 ///< m, size of the rock blocks in the plunge pool
  bool is_sound_rock = false;                    ///< the river bed below is rock known to stand a plunge pool
  double pool_stone_size = 0.0;                  ///< m, median stone of the riprap pool; 0: chosen
};

}  // namespace quell::site
