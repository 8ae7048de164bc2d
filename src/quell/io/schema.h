// The one table of the site file. Every section and key stands in it once, with kind, dimension, range, default, help and
// the place in site::Site it goes to. The reader, the nearest-key suggestion, the echo of inputs and docs/site-file.md all
// iterate it: a new key is one new row.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "quell/base/method.h"
#include "quell/base/units.h"
#include "quell/site/site.h"

namespace quell::io {

/// Place in a text file, both from 1; 0 where there is none.
struct Place {
  int line = 0;
  int column = 0;
};

/// What may stand behind the equals sign.
enum class Kind {
  text,      ///< "any words"
  choice,    ///< one word of `choices`, upper and lower case alike
  quantity,  ///< "412.5 m", or a bare number in the file's system
  number,    ///< without dimension
  angle,     ///< "15 deg", or a bare number of degrees; the range stands in degrees, the value is read in radians
  whole_number,
  slope,        ///< "0.7H:1V", "35 deg", "25 %", or fall per horizontal length; read as tan
  side_slope,   ///< "2H:1V" or "45 deg"; read as horizontal per vertical
  width,        ///< "free" or a length
  texts,        ///< list of words
  quantities,   ///< list of quantities
  spread,       ///< one number or quantity, or { low = …, expected = …, high = … }
  file,         ///< path relative to the site file
  uncertainty,  ///< { distribution = …, … } of what the section gives as a table
  table,        ///< a section: its keys are the rows whose section is this name
  tables        ///< a list of such sections
};

/// One value as read, in SI. Only the members of its kind are filled.
struct Value {
  std::string text;
  double number = 0.0;
  int choice = 0;  ///< index into the choices
  bool is_free = false;
  std::array<double, 3> cases{};  ///< by TailwaterCase
  bool has_spread = false;
  std::vector<std::string> texts;
  std::vector<double> numbers;
  std::vector<Place> places;  ///< of the list's members
};

/// The site under construction, with what the checks need to know and the engine does not.
struct Draft {
  site::Site site;
  std::vector<std::string> rule_patterns;                                ///< name of the pattern of each rule of the gates
  std::map<std::string, std::string, std::less<>> files;                 ///< path of each key of that kind: "river.rating.file"
  std::map<std::string, std::vector<Place>, std::less<>> member_places;  ///< of each list: "river.rating.low"
  /// Where each key was read without a problem, "crest.level" or "chute.reaches[1].slope"; members count from 1; a default has
  /// line 0.
  std::map<std::string, Place, std::less<>> read;
};

/// A key that has a meaning only where another of its section, a choice that stands before it, is one of some words.
struct Condition {
  std::string_view chooser = {};  ///< "shape"; empty: no condition
  std::string_view words = {};    ///< "sharp|labyrinth"
  std::string_view reason = {};   ///< why it has no meaning for the others, to end a message
};

struct Key {
  std::string_view section = {};  ///< "crest", "river.section"; "" at the head of the file
  std::string_view name = {};
  Kind kind = Kind::text;
  Dimension dimension = {};
  bool required = false;               ///< with a group: one key of the group is required
  bool all_or_nothing = false;         ///< a section that takes no defaults where it is left out
  std::string_view group = {};         ///< keys of one section with the same group exclude each other
  Condition only_for = {};             ///< where it is not met, the key is neither required nor allowed, and takes no default
  Range range = {};                    ///< SI; also keeps absurd numbers from the engine
  std::string_view choices = {};       ///< "round|pointed"
  std::string_view preset = {};        ///< the default, as it would be typed in TOML
  std::string_view preset_words = {};  ///< a default that follows from other keys, in words; `derive` computes it
  std::string_view example_si = {};    ///< as typed in TOML
  std::string_view example_us = {};    ///< the same in US customary units, where it differs
  std::string_view help = {};
  void (*set)(Draft&, const Value&) = nullptr;  ///< for `tables`: called once for each member, to add it
  /// Sets the default and returns it in SI; nothing where what it follows from was not read.
  std::optional<double> (*derive)(Draft&) = nullptr;
};

/// All rows; the rows of one section stand together, in the order of the file.
std::span<const Key> schema();

/// Whether a value of this key may carry its uncertainty: { value = …, distribution = …, … }.
bool may_be_uncertain(const Key& key);

/// Rows of one section.
std::vector<const Key*> keys_of(std::string_view section);

/// What the keys before the first section are called, and said of them.
inline constexpr std::string_view head_title = "Head of the file";
inline constexpr std::string_view head_help = "These stand before the first section, or are the sections.";

/// The rows that are sections or lists of sections, in the order of the file: each before those below it.
std::vector<const Key*> section_rows();

/// The row of "crest.level" or "river.bed"; null where there is none.
const Key* find_key(std::string_view full);

/// The three words of a value of Kind::spread.
inline constexpr std::array<std::string_view, 3> spread_words{"low", "expected", "high"};

/// "crest.level": name of a key with its section.
std::string full_name(std::string_view section, std::string_view name);

std::vector<std::string_view> choices_of(const Key& key);

/// The words of a list such as "round|pointed".
std::vector<std::string_view> words_of(std::string_view list);

/// `shape = "sharp" or "labyrinth"`: the condition of a key in words; empty where it has none.
std::string condition_text(const Key& key);

/// How to write a value of this key: `write it like "850 m3/s" or "30 000 ft3/s"`.
std::string how_to_write(const Key& key);

/// docs/site-file.md: every section and key, generated from the table.
std::string site_file_reference();

}  // namespace quell::io
