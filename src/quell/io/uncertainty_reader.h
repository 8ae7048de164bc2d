// The uncertainty of an input, declared where the input stands: `{ value = "6.5 m", distribution = "normal", cov = 0.05 }`, or
// by name: `{ value = "0.6 mm", uncertainty = "concrete roughness" }`.
#pragma once

#include <toml++/toml.h>

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "quell/io/problem_list.h"
#include "quell/io/schema.h"

namespace quell::io {

/// The words of such a table, "value" first.
std::span<const std::string_view> uncertainty_words();
/// The words that the value of a key has where it is a table: those of its spread and of its uncertainty; mostly none.
std::vector<std::string_view> words_of_value(const Key& key);
/// How one word of the table around a value of `key` is written: kind, dimension, range, choices.
Key key_of_word(const Key& key, std::string_view word);

/// Whether `node`, which stands for a key that may be uncertain, is such a table and not a plain value.
bool declares_uncertainty(const Key& key, const toml::node& node);

/// The node of the value in such a table; a problem where it has none.
const toml::node* value_in(const Key& key, const toml::node& table, ProblemList& problems);

/// Reads the declaration around `value` (SI). Nothing where it is wrong; the problem is then in `problems`. For a key of
/// Kind::uncertainty, `node` may also be the name of a recommendation, and `value` is nothing: the error is that of a level.
std::optional<site::UncertainInput> read_uncertainty(const Key& key, const toml::node& node, std::optional<double> value,
                                                     UnitSystem system, ProblemList& problems);

/// "normal, cov 0.05": what the table declares besides the value, as typed.
std::string typed_uncertainty(const Key& key, const toml::table& table, UnitSystem system);

}  // namespace quell::io
