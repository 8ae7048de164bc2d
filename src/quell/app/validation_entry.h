// What a [[check]] and a [[case]] of the validation book share: the head of the entry, how its faults are named, and how a
// number is compared. Private to the validation book.
#pragma once

#include <toml++/toml.h>

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "quell/app/validation.h"
#include "quell/base/method.h"

namespace quell::app {

using Complaint = tl::unexpected<std::string>;

bool known_mark(std::string_view mark);

/// A text, a number or nothing, as text: a number of the book may stand without quotes.
std::string text_of(const toml::node* node);
std::string text_in(const toml::table& table, std::string_view key);

/// A key of the table that is none of `keys`.
std::optional<std::string> stranger(const toml::table& table, std::initializer_list<std::string_view> keys);

const Symbol* find_symbol(std::span<const Symbol> symbols, std::string_view name);

/// What running a part of an entry gives: nothing, or a sentence on what is wrong with the book.
using Done = tl::expected<void, std::string>;

/// One entry of a file: reads it, runs it, and hands its rows to the file.
class Entry {
 public:
  Entry(const toml::table& table, CheckedFile& file);

 protected:
  const toml::table& table_;
  CheckedFile& file_;
  CheckRow row_;  ///< what all rows of the entry share

  /// The keys are known, and place, why and provenance are as they should be.
  Done check_head(std::initializer_list<std::string_view> keys) const;

  /// The entry itself is wrong: `what` names it, the place is added.
  void fault(std::string_view what, std::string_view text);

  /// A row without a number.
  void state(std::string symbol, bool passed, std::string note);

  struct Found {
    std::string_view name;
    Dimension dimension;
    double value;  ///< SI
  };
  /// A row for `found` against the number of the book.
  Done compare(const Found& found, const std::string& expected_text, std::string note);
};

}  // namespace quell::app
