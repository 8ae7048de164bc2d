// One TOML value to one Value in SI, judged against its row of the schema.
#pragma once

#include <toml++/toml.h>

#include <optional>
#include <string>

#include "quell/io/problem_list.h"
#include "quell/io/schema.h"

namespace quell::io {

Place place_of(const toml::node& node);

/// Reads the value of `key`, which is neither a table nor a list of tables. Nothing where it is wrong; the problem is then in
/// `problems`.
std::optional<Value> read_value(const Key& key, const toml::node& node, UnitSystem system, ProblemList& problems);

/// The value as typed: `6.5 m`, `6.5 (m)` for a bare number with a dimension, a list in brackets.
std::string typed_text(const Key& key, const toml::node& node, UnitSystem system);

}  // namespace quell::io
