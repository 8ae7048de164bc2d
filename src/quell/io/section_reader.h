// Walks the parsed file along the schema: every key of every section, whatever they are.
#pragma once

#include <toml++/toml.h>

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "quell/io/problem_list.h"
#include "quell/io/schema.h"

namespace quell::io {

class SectionReader {
 public:
  SectionReader(Draft& draft, std::vector<EchoedInput>& inputs, ProblemList& problems)
      : draft_(draft), inputs_(inputs), problems_(problems) {}

  /// Fills the draft; problems and echoed inputs are added as they come.
  void read_file(const toml::table& root);

 private:
  Draft& draft_;
  std::vector<EchoedInput>& inputs_;
  ProblemList& problems_;
  std::map<std::string, std::string_view, std::less<>> chosen_;  ///< word of each choice that was read: "crest.shape"

  /// One table that is read as `section` of the schema. `label` names this very table: "chute.reaches[1]".
  struct Visit {
    const toml::table& table;
    std::string_view section;
    std::string label;
    Place place;                         ///< of its heading
    std::vector<const Key*> meant = {};  ///< keys that a mistyped name stands for
  };

  void read_section(Visit visit);
  void judge_unknown_keys(Visit& visit);
  void judge_unknown_key(Visit& visit, std::string_view name, Place place);
  void judge_groups(const Visit& visit);
  bool given(const Visit& visit, const Key& key) const;
  bool group_given(const Visit& visit, const Key& key) const;
  enum class Meaning { holds, unknown, none };
  /// Whether the key's condition is met; unknown where the choice it hangs on was not read.
  Meaning meaning_of(const Visit& visit, const Key& key) const;
  void refuse(const Visit& visit, const Key& key, const toml::node& node);
  void read_key(const Visit& visit, const Key& key);
  void read_present(const Visit& visit, const Key& key, const toml::node& node);
  void read_single(const Visit& visit, const Key& key, const toml::node& node);
  void declare_uncertainty(const Visit& visit, const Key& key, const toml::node& node, std::optional<double> value);
  void read_absent(const Visit& visit, const Key& key);
  void read_members(const Visit& visit, const Key& key, const toml::node& node);
  void take_preset(const Visit& visit, const Key& key);
  void remember_choice(const std::string& label, const Key& key, const Value& value);
  void echo(const Visit& visit, const Key& key, std::string typed, int line);
};

}  // namespace quell::io
