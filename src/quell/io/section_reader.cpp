#include "quell/io/section_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "quell/io/nearest.h"
#include "quell/io/uncertainty_reader.h"
#include "quell/io/values.h"

namespace quell::io {
namespace {

constexpr std::size_t most_members = 500;
constexpr std::size_t most_unknown_keys = 20;  ///< of one section
constexpr int no_line = 0;                     ///< of a default

std::string heading(std::string_view section) {
  return fmt::format("[{}]", section);
}

bool holds(const Condition& condition, std::string_view word) {
  const auto words = words_of(condition.words);
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// Whether a key's condition is met by the default of the choice it hangs on.
bool holds_by_default(const Key& key) {
  if (key.only_for.chooser.empty()) return true;
  for (const Key* chooser : keys_of(key.section))
    if (chooser->name == key.only_for.chooser)
      for (const std::string_view word : words_of(key.only_for.words))
        if (fmt::format("\"{}\"", word) == chooser->preset) return true;
  return false;
}

/// "level, design_head, net_width"; of a group, its first key.
std::string required_keys(std::string_view section) {
  std::string text;
  std::string_view group;
  for (const Key* key : keys_of(section)) {
    if (!key->required || !holds_by_default(*key) || (!key->group.empty() && key->group == group)) continue;
    group = key->group;
    text += fmt::format("{}{}", text.empty() ? "" : ", ", key->name);
  }
  return text;
}

/// The section that holds a key of that name; empty where none or many do.
std::string_view home_of(std::string_view name) {
  std::string_view home;
  for (const Key& key : schema())
    if (key.name == name) {
      if (!home.empty()) return {};
      home = key.section;
    }
  return home;
}

/// "a, b and c"; sections in brackets.
std::string listed(const std::vector<const Key*>& keys) {
  std::string text;
  for (std::size_t i = 0; i < keys.size(); ++i)
    text += fmt::format(
        "{}{}",
        i == 0                 ? ""
        : i + 1 == keys.size() ? " and "
                               : ", ",
        keys[i]->kind == Kind::table ? heading(full_name(keys[i]->section, keys[i]->name)) : std::string(keys[i]->name));
  return text;
}

}  // namespace

void SectionReader::read_file(const toml::table& root) {
  // The unit system first: it gives bare numbers their meaning.
  if (const toml::node* units = root.get("units")) {
    ProblemList unheard(problems_.file(), {});
    if (const auto value = read_value(*keys_of("").front(), *units, UnitSystem::si, unheard))
      keys_of("").front()->set(draft_, *value);
  }
  read_section({root, "", "", {1, 1}});
}

void SectionReader::read_section(Visit visit) {
  judge_unknown_keys(visit);
  judge_groups(visit);
  for (const Key* key : keys_of(visit.section)) read_key(visit, *key);
}

void SectionReader::judge_unknown_keys(Visit& visit) {
  const std::vector<const Key*> keys = keys_of(visit.section);
  std::size_t unknown = 0;
  for (const auto& [name, node] : visit.table) {
    const bool known = std::any_of(keys.begin(), keys.end(), [&](const Key* key) { return key->name == name.str(); });
    if (known) continue;
    const toml::source_position& at = name.source().begin;
    if (++unknown > most_unknown_keys) break;
    judge_unknown_key(visit, name.str(), {static_cast<int>(at.line), static_cast<int>(at.column)});
  }
}

void SectionReader::judge_unknown_key(Visit& visit, std::string_view name, Place place) {
  const std::vector<const Key*> keys = keys_of(visit.section);
  std::vector<std::string_view> names;
  names.reserve(keys.size());
  for (const Key* key : keys) names.push_back(key->name);
  const std::string_view meant = nearest(name, names);
  const std::string where = visit.section.empty() ? std::string("at the head of the file") : "in " + heading(visit.section);
  std::string message = fmt::format("unknown key '{}' {}", name.substr(0, 60), where);
  const std::string_view home = home_of(name);
  if (!home.empty()) {
    message += fmt::format("; it belongs in {}", heading(home));
  } else if (!meant.empty()) {
    message += fmt::format("; did you mean '{}'?", meant);
    for (const Key* key : keys)
      if (key->name == meant) visit.meant.push_back(key);
  } else {
    message += fmt::format("; known are {}", fmt::join(names, ", "));
  }
  problems_.problem(place, std::move(message));
}

bool SectionReader::given(const Visit& visit, const Key& key) const {
  return visit.table.contains(key.name) || std::find(visit.meant.begin(), visit.meant.end(), &key) != visit.meant.end();
}

bool SectionReader::group_given(const Visit& visit, const Key& key) const {
  if (key.group.empty()) return given(visit, key);
  const std::vector<const Key*> keys = keys_of(visit.section);
  return std::any_of(keys.begin(), keys.end(),
                     [&](const Key* other) { return other->group == key.group && given(visit, *other); });
}

void SectionReader::judge_groups(const Visit& visit) {
  std::vector<std::string_view> judged;
  for (const Key* key : keys_of(visit.section)) {
    if (key->group.empty() || std::find(judged.begin(), judged.end(), key->group) != judged.end()) continue;
    judged.push_back(key->group);
    Place last;
    std::vector<const Key*> members;
    std::vector<const Key*> present;
    for (const Key* other : keys_of(visit.section)) {
      if (other->group != key->group) continue;
      members.push_back(other);
      const toml::node* node = visit.table.get(other->name);
      if (node == nullptr) continue;
      present.push_back(other);
      const Place place = place_of(*node);
      if (place.line > last.line || (place.line == last.line && place.column > last.column)) last = place;
    }
    if (present.size() > 1) problems_.problem(last, fmt::format("{} exclude each other; keep one", listed(present)));
    if (!group_given(visit, *key) && key->required)
      problems_.problem(visit.place, fmt::format("{} needs one of {}", heading(visit.label), listed(members)));
  }
}

SectionReader::Meaning SectionReader::meaning_of(const Visit& visit, const Key& key) const {
  if (key.only_for.chooser.empty()) return Meaning::holds;
  const auto word = chosen_.find(full_name(visit.label, key.only_for.chooser));
  if (word == chosen_.end()) return Meaning::unknown;
  return holds(key.only_for, word->second) ? Meaning::holds : Meaning::none;
}

void SectionReader::refuse(const Visit& visit, const Key& key, const toml::node& node) {
  const std::string_view word = chosen_.find(full_name(visit.label, key.only_for.chooser))->second;
  problems_.problem(place_of(node), fmt::format("{} has no meaning with {} = \"{}\": {}; delete it, or set {}", key.name,
                                                key.only_for.chooser, word, key.only_for.reason, condition_text(key)));
}

void SectionReader::read_key(const Visit& visit, const Key& key) {
  const toml::node* node = visit.table.get(key.name);
  const Meaning meaning = meaning_of(visit, key);
  if (meaning == Meaning::none) {
    if (node != nullptr) refuse(visit, key, *node);
  } else if (node != nullptr) {
    read_present(visit, key, *node);
  } else if (meaning == Meaning::holds && !group_given(visit, key)) {
    read_absent(visit, key);
  }
}

void SectionReader::read_present(const Visit& visit, const Key& key, const toml::node& node) {
  const std::string label = full_name(visit.label, key.name);
  if (key.kind == Kind::tables) {
    read_members(visit, key, node);
  } else if (key.kind == Kind::table) {
    if (!node.is_table()) {
      problems_.problem(place_of(node), fmt::format("{} is a section: write {} on a line of its own and its keys below",
                                                    key.name, heading(label)));
      return;
    }
    draft_.read[label] = place_of(node);
    if (key.set != nullptr) key.set(draft_, {});
    read_section({*node.as_table(), label, label, place_of(node)});
  } else if (key.kind == Kind::uncertainty) {
    declare_uncertainty(visit, key, node, std::nullopt);
  } else {
    read_single(visit, key, node);
  }
}

void SectionReader::read_single(const Visit& visit, const Key& key, const toml::node& node) {
  const std::string label = full_name(visit.label, key.name);
  const bool is_uncertain = declares_uncertainty(key, node);
  const toml::node* value_node = is_uncertain ? value_in(key, node, problems_) : &node;
  if (value_node == nullptr) return;
  const auto value = read_value(key, *value_node, draft_.site.units, problems_);
  if (!value) return;
  draft_.read[label] = place_of(*value_node);
  remember_choice(label, key, *value);
  if (key.kind == Kind::file) draft_.files[label] = value->text;
  if (!value->places.empty()) draft_.member_places[label] = value->places;
  key.set(draft_, *value);
  if (is_uncertain) {
    const double expected = value->cases[site::index_of(site::TailwaterCase::expected)];
    declare_uncertainty(visit, key, node, key.kind == Kind::spread ? expected : value->number);
  } else {
    echo(visit, key, typed_text(key, node, draft_.site.units), place_of(node).line);
  }
}

void SectionReader::declare_uncertainty(const Visit& visit, const Key& key, const toml::node& node,
                                        std::optional<double> value) {
  auto input = read_uncertainty(key, node, value, draft_.site.units, problems_);
  if (!input) return;
  // That of a whole rating bears the name of its section.
  input->key = key.kind == Kind::uncertainty ? visit.label : full_name(visit.label, key.name);
  draft_.site.uncertain.push_back(std::move(*input));
  echo(visit, key, typed_text(key, node, draft_.site.units), place_of(node).line);
}

void SectionReader::read_members(const Visit& visit, const Key& key, const toml::node& node) {
  const std::string label = full_name(visit.label, key.name);
  const toml::array* members = node.as_array();
  const auto is_table = [](const toml::node& member) { return member.is_table(); };
  if (members == nullptr || !std::all_of(members->begin(), members->end(), is_table) || members->empty()) {
    problems_.problem(place_of(node),
                      fmt::format("{} is a list: write [[{}]] before the keys of each member, or {} = [ {{ … }}, {{ … }} ]",
                                  key.name, label, key.name));
    return;
  }
  if (members->size() > most_members) {
    problems_.problem(place_of(node),
                      fmt::format("{} has {} members; at most {} are read", key.name, members->size(), most_members));
    return;
  }
  draft_.read[label] = place_of(node);
  std::size_t index = 0;
  for (const toml::node& member : *members) {
    const std::string member_label = fmt::format("{}[{}]", label, ++index);
    draft_.read[member_label] = place_of(member);
    key.set(draft_, {});
    const std::string section = full_name(key.section, key.name);
    read_section({*member.as_table(), section, member_label, place_of(member)});
  }
}

void SectionReader::read_absent(const Visit& visit, const Key& key) {
  const std::string label = full_name(visit.label, key.name);
  if (key.kind == Kind::table && key.group.empty()) {
    const std::string needed = required_keys(label);
    if (key.required) {
      problems_.problem(visit.place, fmt::format("the section {} is missing; it needs at least {}", heading(label), needed));
    } else if (!key.all_or_nothing) {
      const toml::table empty;
      read_section({empty, label, label, visit.place});
    }
  } else if (key.required && key.group.empty()) {
    const std::string where = visit.label.empty() ? "at the head of the file" : "in " + heading(visit.label);
    problems_.problem(visit.place, fmt::format("{} is missing {}: {}", key.name, where, how_to_write(key)));
  } else if (!key.preset.empty()) {
    take_preset(visit, key);
  } else if (key.derive != nullptr) {
    const std::optional<double> value = key.derive(draft_);
    if (!value) return;
    draft_.read[label] = {};
    echo(visit, key, fmt::format("{}: {}", key.preset_words, format_quantity(*value, key.dimension, draft_.site.units)),
         no_line);
  }
}

void SectionReader::take_preset(const Visit& visit, const Key& key) {
  const toml::table preset = toml::parse(fmt::format("value = {}", key.preset));
  const toml::node& node = *preset.get("value");
  ProblemList own("the schema", {});
  const auto value = read_value(key, node, UnitSystem::si, own);
  if (!value) {
    problems_.problem(visit.place, fmt::format("quell's own default for {} does not hold: report this fault", key.name));
    return;
  }
  const std::string label = full_name(visit.label, key.name);
  draft_.read[label] = {};
  remember_choice(label, key, *value);
  key.set(draft_, *value);
  echo(visit, key, typed_text(key, node, UnitSystem::si), no_line);
}

void SectionReader::remember_choice(const std::string& label, const Key& key, const Value& value) {
  if (key.kind == Kind::choice) chosen_[label] = choices_of(key)[static_cast<std::size_t>(value.choice)];
}

void SectionReader::echo(const Visit& visit, const Key& key, std::string typed, int line) {
  inputs_.push_back({visit.label, std::string(key.name), std::move(typed), std::string(key.help), line == no_line, line});
}

}  // namespace quell::io
