// The rows of the schema, section by section; `schema` puts them together.
#pragma once

#include <optional>
#include <span>

#include "quell/io/schema.h"

namespace quell::io {

std::span<const Key> head_rows();       ///< head of the file, project
std::span<const Key> structure_rows();  ///< crest, chute
std::span<const Key> gate_rows();       ///< gates, outlets
std::span<const Key> river_rows();      ///< river with rating, section and gauging
std::span<const Key> survey_rows();     ///< surveyed river, its bed
std::span<const Key> flood_rows();      ///< floods, reservoir, discharges
std::span<const Key> basin_rows();      ///< basin
std::span<const Key> choice_rows();     ///< basin's choices
std::span<const Key> ground_rows();     ///< ground
std::span<const Key> safety_rows();     ///< slab, foundation, laboratory
std::span<const Key> wall_rows();       ///< walls, elements

inline constexpr Range level_range{-500.0, 9000.0};
inline constexpr Range basin_length_range{0.5, 500.0};  ///< m
inline constexpr Range width_range{1e-12, 5000.0};
inline constexpr Range discharge_range{1e-12, 1e6};
inline constexpr Range natural_n_range{0.01, 0.3};

/// A default that follows from a number that is zero where it was not read.
inline std::optional<double> if_known(double value) {
  return value > 0.0 ? std::optional<double>(value) : std::nullopt;
}

/// `set` of a key whose value is kept elsewhere: the path of a file in `Draft::files`, an uncertainty in `Site::uncertain`.
inline void kept_elsewhere(Draft&, const Value&) {}

}  // namespace quell::io
