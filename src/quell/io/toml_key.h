// Which key stands at a place of a TOML text: what the reader's problems are about, for a form that marks the field.
#pragma once

#include <toml++/toml.h>

#include <string>

#include "quell/io/schema.h"

namespace quell::io {

/// "crest.level", "chute.reaches[2].slope" (members count from 1), or a heading such as "crest": the last key that starts at or
/// before `place`. Empty where there is none, or where `place` is none.
std::string key_at(const toml::table& root, Place place);

}  // namespace quell::io
