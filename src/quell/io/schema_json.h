// The schema as JSON: what a page needs to show a form for a site file, made from the rows and nothing else.
#pragma once

#include <string>

namespace quell::io {

/// {"sections": [ … ], "uncertainty": { … }}.
///
/// A section has name, parent, title, help, is_list, required, all_or_nothing, group, only_for and keys. The first, with the
/// empty name, is the head of the file. Members of a list are such sections.
///
/// A key has section, name, title, help, kind (the words of `Kind`), dimension, units {"si": [ … ], "us": [ … ]}, range {"si":
/// {lowest, highest, unit}, "us": …, "excludes_lowest"} (in base units of SI, but kPa, kN and kW as printed, and in the units
/// in which US customary results are printed), choices, preset and preset_words, required, group, only_for, example_si,
/// example_us, may_be_uncertain, words (of a value that is a table) and is_file. What a key does not have is null, or an empty
/// list.
///
/// A group is an either-or: its keys (and sections) exclude each other within a section; required then means one of them.
/// only_for is {"key", "words", "reason"}: the key has a meaning only where that choice of its section is one of the words.
std::string schema_json();

}  // namespace quell::io
