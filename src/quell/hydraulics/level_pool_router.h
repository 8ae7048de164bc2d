// The integration behind route_level_pool, for any law of outflow over the level. Only for the sources of the level pool.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "quell/base/roots.h"
#include "quell/hydraulics/dormand_prince.h"
#include "quell/hydraulics/level_pool.h"
#include "quell/hydraulics/level_pool_rows.h"

namespace quell::hydraulics {

/// `Law` gives the outflow (m3/s) at a level (m) by `at`, and by `smooth` without the kink where it begins: what stands above
/// goes on below, with outflows below zero. A step that starts above takes `smooth`, since its trials reach below; with `at`
/// their error would hardly show. `kinks` are the levels (m) at which the law is not smooth, `begins` the one where it begins.
template <class Law>
struct RouterStage {
  Law law;
  std::span<const double> kinks;
  double begins;
  double up_level;
  double down_level;
};

template <class Law>
class LevelPoolRouter {
 public:
  LevelPoolRouter(const RoutingInput& input, std::vector<RouterStage<Law>> stages)
      : input_(input), pool_(input.storage), stages_(std::move(stages)), stage_(input.first_stage) {
    for (const auto& stage : stages_) {
      Marks marks{.kinks = {},
                  .begins = stage.begins >= pool_.lowest_level() ? pool_.storage(stage.begins) : -endless,
                  .up = std::isfinite(stage.up_level) ? pool_.storage(stage.up_level) : endless,
                  .down = stage.down_level > pool_.lowest_level() ? pool_.storage(stage.down_level) : -endless};
      for (std::size_t i = 1; i < pool_.points(); ++i) marks.kinks.push_back(pool_.point_storage(i));
      for (const double level : stage.kinks)
        if (level > pool_.lowest_level()) marks.kinks.push_back(pool_.storage(level));
      if (stage.begins == pool_.lowest_level()) marks.kinks.push_back(marks.begins);
      std::sort(marks.kinks.begin(), marks.kinks.end());
      marks_.push_back(std::move(marks));
    }
  }

  Outcome<RoutedFlood> run() {
    const auto& time = input_.time;
    const auto& inflow = input_.inflow;
    reserve_rows(flood_, time.size() + 64);
    start_ = time[0];
    inflow_ = inflow[0];
    inflow_slope_ = 0.0;
    y_ = {pool_.storage(input_.initial_level), 0.0, 0.0};
    least_storage_ =
        pool_.lowest_storage() - (pool_.storage(pool_.lowest_level() + 10.0 * input_.tolerance) - pool_.lowest_storage());
    mean_area_ =
        (pool_.storage(pool_.highest_level()) - pool_.lowest_storage()) / (pool_.highest_level() - pool_.lowest_level());
    step_ = time[1] - time[0];
    flood_.peak_inflow = inflow[0];
    peak_storage_ = flood_.peak_outflow = -endless;
    renew();
    if (const auto settled = settle(0); !settled) return tl::unexpected(settled.error());
    put_row();
    const double first_storage = pool_.storage(input_.initial_level);
    for (std::size_t i = 1; i < time.size(); ++i)
      if (const auto done = segment({time[i - 1], time[i], inflow[i - 1], inflow[i]}); !done)
        return tl::unexpected(done.error());
    if (input_.after > 0.0) {
      const double last = time.back();
      const double count = std::clamp(std::ceil(input_.after / (last - time[time.size() - 2])), 1.0, 1000.0);
      for (double k = 0.0; k < count; ++k) {
        const auto done =
            segment({last + k / count * input_.after, last + (k + 1.0) / count * input_.after, inflow.back(), inflow.back()});
        if (!done) return tl::unexpected(done.error());
      }
    }
    finish(first_storage);
    return std::move(flood_);
  }

 private:
  static constexpr double endless = std::numeric_limits<double>::infinity();
  static constexpr int most_changes = 1000;
  static constexpr double negligible = 1e-3;      ///< share of the tolerance below which a step may cross a kink
  static constexpr double share_of_step = 1e-10;  ///< to which the ends of steps are located
  using State = std::array<double, 3>;            ///< storage, volume out, time since the start of the segment
  using Step = DormandPrinceStep<3>;
  struct Marks {  // storages
    std::vector<double> kinks;
    double begins, up, down;
  };
  struct Segment {
    double from, to, inflow_from, inflow_to;
  };
  double level(double storage) { return pool_.level_at(storage, panel_); }

  State rates(const State& y) {
    const double outflow = flows_ ? stages_[stage_].law.smooth(reach_of(y[0])) : stages_[stage_].law.at(level(y[0]));
    return {inflow_ + inflow_slope_ * y[2] - outflow, outflow, 1.0};
  }

  Outcome<Step> step(double h) {
    ++tried_;
    return dormand_prince<3>(y_, slope_, h, [this](const State& y) -> Outcome<State> { return rates(y); });
  }

  /// After a change of stage or of the law: slopes and peaks at the state held.
  void renew() {
    flows_ = y_[0] > marks_[stage_].begins;
    slope_ = rates(y_);
    note_peaks();
  }

  FloodRow row() {
    return {start_ + y_[2], inflow_ + inflow_slope_ * y_[2], slope_[1], level(y_[0]), static_cast<int>(stage_)};
  }

  void note_peaks() {
    if (y_[0] > peak_storage_) {
      peak_storage_ = y_[0];
      highest_ = row();
    }
    if (slope_[1] > flood_.peak_outflow) {
      flood_.peak_outflow = slope_[1];
      largest_ = row();
    }
  }

  void put_row() { append_row(flood_, row()); }

  /// Changes the stage until it fits the level; `direction` is that of a change due now, 0 where none is.
  Outcome<void> settle(int direction) {
    int due = direction;
    while (true) {
      if (due == 0 && stage_ + 1 < stages_.size() && y_[0] > marks_[stage_].up) due = 1;
      if (due == 0 && stage_ > 0 && y_[0] < marks_[stage_].down) due = -1;
      if (due == 0) return {};
      if (direction != 0 && due != direction) return no_answer(endless_change);
      direction = due;
      if (++flood_.stage_changes > most_changes) return no_answer(endless_change);
      if (!flood_.time.empty()) put_row();
      stage_ = due > 0 ? stage_ + 1 : stage_ - 1;
      renew();
      if (!flood_.time.empty()) put_row();
      due = 0;
    }
  }

  Outcome<void> segment(const Segment& segment) {
    start_ = segment.from;
    length_ = segment.to - segment.from;
    inflow_ = segment.inflow_from;
    inflow_slope_ = (segment.inflow_to - segment.inflow_from) / length_;
    y_[2] = 0.0;
    flood_.peak_inflow = std::max(flood_.peak_inflow, segment.inflow_to);
    flood_.volume_in += 0.5 * length_ * (segment.inflow_from + segment.inflow_to);
    while (y_[2] < length_)
      if (const auto done = advance(); !done) return done;
    put_row();
    return {};
  }

  /// One step, or a shorter one after a trial that was too long.
  Outcome<void> advance() {
    const double rest = length_ - y_[2];
    double h = std::min({step_, rest, input_.longest_step});
    if (rest - h < 1e-9 * rest) h = rest;
    if (tried_ > input_.most_steps + 4 * input_.time.size() || !(h > 1e-15 * (length_ + y_[2]))) return no_answer(too_steep);
    auto trial = step(h);
    if (!trial) return tl::unexpected(trial.error());
    const double error = reach_of(trial->value[0] + trial->error) - reach_of(trial->value[0]);
    const auto factor = [&](double least, double most) {
      if (!std::isfinite(error)) return least;
      return std::clamp(0.9 * std::pow(input_.tolerance / std::max(error, 1e-300), 0.2), least, most);
    };
    if (!(error <= input_.tolerance)) {
      step_ = h * factor(0.2, 0.9);
      return {};
    }
    if (h >= step_) step_ = h * factor(0.2, 5.0);
    if (has_hidden_turn(*trial, h)) {
      h = located(h, [&](const Step& s) { return s.slope[0]; }, slope_[0]);
      trial = step(h);
      if (!trial) return tl::unexpected(trial.error());
    }
    const double from = y_[0];
    const double to = trial->value[0];
    const Marks& mark = marks_[stage_];
    const int change = stage_ + 1 < stages_.size() && to > mark.up ? 1 : stage_ > 0 && to < mark.down ? -1 : 0;
    const double end = change > 0 ? mark.up : change < 0 ? mark.down : to;
    const bool begins = (to > mark.begins) != flows_;
    const auto kink = begins || error > negligible * input_.tolerance ? first_kink(from, end) : std::nullopt;
    if (!kink && change == 0) return accept(*trial, h >= rest);
    const double storage = kink ? *kink : end;
    h = located(h, [storage](const Step& s) { return storage - s.value[0]; }, storage - from);
    if (h > 0.0) {
      trial = step(h);
      if (!trial) return tl::unexpected(trial.error());
      if (const auto done = accept(*trial, h >= rest); !done) return done;
    }
    return kink ? Outcome<void>{} : settle(change);
  }

  /// The level (m), carried on below the lowest one so that an error there is seen.
  double reach_of(double storage) {
    const double lacking = pool_.lowest_storage() - storage;
    return lacking > 0.0 ? pool_.lowest_level() - lacking / mean_area_ : level(storage);
  }

  /// The first kink on the way from one storage to another. One where the way starts does not count.
  std::optional<double> first_kink(double from, double to) const {
    const auto& kinks = marks_[stage_].kinks;
    const auto next = std::upper_bound(kinks.begin(), kinks.end(), from + 1e-9 * (to - from));
    if (to > from) return next != kinks.end() && *next < to ? std::optional(*next) : std::nullopt;
    return next != kinks.begin() && *(next - 1) > to ? std::optional(*(next - 1)) : std::nullopt;
  }

  /// True where the storage turns inside the step and its extremum matters: as a peak, or beyond a mark.
  bool has_hidden_turn(const Step& trial, double h) {
    if (slope_[0] * trial.slope[0] >= 0.0) return false;
    const double reach = y_[0] + h * slope_[0];
    const double least = 1e-6 * input_.tolerance * pool_.area(level(y_[0]));
    if (std::abs(h * slope_[0]) < least) return false;
    const Marks& mark = marks_[stage_];
    if (slope_[0] < 0.0) {
      const double low = std::min(y_[0], trial.value[0]);
      return reach < mark.down && low >= mark.down;
    }
    const double high = std::max(y_[0], trial.value[0]);
    return reach > peak_storage_ || (reach > mark.up && high <= mark.up) ||
           stages_[stage_].law.at(level(reach)) > flood_.peak_outflow;
  }

  /// A little more than the length of step after which `f` is zero; its sign at the start (`at_start`) differs from the one
  /// after a step of h. Zero where rounding leaves no way to go.
  template <class Function>
  double located(double h, const Function& f, double at_start) {
    const auto value = [&](double part) {
      if (part <= 0.0) return at_start;
      const auto trial = step(part);
      return trial ? f(*trial) : std::numeric_limits<double>::quiet_NaN();
    };
    const auto root = find_root(value, 0.0, h, share_of_step * h);
    return root ? std::min(h, *root + 2.0 * share_of_step * h) : 0.0;
  }

  Outcome<void> accept(const Step& trial, bool whole) {
    y_ = trial.value;
    slope_ = trial.slope;
    if (whole) y_[2] = length_;
    if (y_[0] < least_storage_) return no_answer("the pool empties: the level falls below the lowest of the storage");
    if ((y_[0] > marks_[stage_].begins) != flows_)
      renew();
    else
      note_peaks();
    return {};
  }

  void finish(double first_storage) {
    flood_.peak_level = highest_.level;
    flood_.peak_level_time = highest_.time;
    flood_.peak_outflow_time = largest_.time;
    flood_.volume_out = y_[1];
    flood_.storage_change = y_[0] - first_storage;
    flood_.balance_error = balance_of(flood_);
    flood_.storage_extrapolated = pool_.extrapolated(flood_.peak_level);
    insert_row(flood_, highest_);
    insert_row(flood_, largest_);
  }

  static constexpr std::string_view endless_change =
      "the rule oscillates: the outflow goes back and forth between two stages without end; set the levels farther apart";
  static constexpr std::string_view too_steep =
      "the outflow is too steep for the storage: the steps became too small or too many";

  const RoutingInput& input_;
  const StorageCurve& pool_;
  std::vector<RouterStage<Law>> stages_;
  std::vector<Marks> marks_;
  std::size_t stage_;
  std::size_t panel_ = 0;
  bool flows_ = false;  ///< the level stands above where the outflow begins
  RoutedFlood flood_;
  double start_ = 0.0;  ///< of the segment, s
  double length_ = 0.0;
  double inflow_ = 0.0;
  double inflow_slope_ = 0.0;
  double step_ = 0.0;
  double least_storage_ = 0.0;
  double mean_area_ = 0.0;
  double peak_storage_ = 0.0;
  State y_{};
  State slope_{};
  FloodRow highest_{};
  FloodRow largest_{};
  std::size_t tried_ = 0;
};

}  // namespace quell::hydraulics
