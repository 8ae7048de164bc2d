#include "quell/hydraulics/level_pool.h"

#include <algorithm>
#include <cmath>

#include "quell/base/roots.h"
#include "quell/hydraulics/dormand_prince.h"

namespace quell::hydraulics {

double RatingTable::at(double level_wanted) const noexcept {
  std::size_t hint = 0;
  return at(level_wanted, hint);
}

double RatingTable::at(double level_wanted, std::size_t& hint) const noexcept {
  if (!(level_wanted >= level[hint] && level_wanted < level[hint + 1])) {
    const auto above = std::upper_bound(level.begin() + 1, level.end() - 1, level_wanted);
    hint = static_cast<std::size_t>(above - level.begin()) - 1;
  }
  const double slope = (discharge[hint + 1] - discharge[hint]) / (level[hint + 1] - level[hint]);
  return discharge[hint] + slope * std::max(0.0, level_wanted - level[hint]);
}

namespace {

constexpr int most_changes = 1000;
constexpr std::string_view oscillates = "the rule of the gates oscillates: it changes back and forth at one level";
constexpr std::string_view empties = "the outflow empties the reservoir below its storage table";

/// Storage and volume out, both over the area at the start of the step so that the error is one of level, and time.
using State = std::array<double, 3>;
using Step = DormandPrinceStep<3>;

class Router {
 public:
  explicit Router(const RoutingInput& input) : in_(input), stage_(input.first_stage) {}

  Outcome<RoutedFlood> run() {
    storage_ = start_storage_ = in_.storage.storage(in_.initial_level);
    level_ = in_.initial_level;
    time_ = in_.time.front();
    reserve(in_.time.size() + 16);
    if (auto settled = settle(); !settled) return tl::unexpected(settled.error());
    record();
    for (segment_ = 0; segment_ + 1 < in_.time.size(); ++segment_) {
      if (auto done = follow_segment(); !done) return tl::unexpected(done.error());
      record();
      result_.volume_in +=
          0.5 * (in_.inflow[segment_] + in_.inflow[segment_ + 1]) * (in_.time[segment_ + 1] - in_.time[segment_]);
    }
    finish();
    return std::move(result_);
  }

 private:
  const RoutingInput& in_;
  RoutedFlood result_;
  std::size_t stage_;
  std::size_t segment_ = 0;
  std::size_t storage_hint_ = 0, rating_hint_ = 0;
  double time_ = 0.0, storage_ = 0.0, start_storage_ = 0.0, level_ = 0.0, out_ = 0.0;
  double step_ = 0.0;  ///< tried next, s

  const OutflowStage& stage() const { return in_.stages[stage_]; }

  double inflow_at(double time) const {
    const std::size_t i = std::min(segment_, in_.time.size() - 2);
    const double share = (time - in_.time[i]) / (in_.time[i + 1] - in_.time[i]);
    return in_.inflow[i] + share * (in_.inflow[i + 1] - in_.inflow[i]);
  }
  double outflow_at(double level) { return stage().rating.at(level, rating_hint_); }

  void reserve(std::size_t count) {
    for (auto* list : {&result_.time, &result_.inflow, &result_.outflow, &result_.level}) list->reserve(count);
    result_.peak_level = -std::numeric_limits<double>::infinity();
    result_.peak_outflow = -1.0;
  }

  void record() {
    const double inflow = inflow_at(time_);
    const double outflow = outflow_at(level_);
    result_.time.push_back(time_);
    result_.inflow.push_back(inflow);
    result_.outflow.push_back(outflow);
    result_.level.push_back(level_);
    if (level_ > result_.peak_level) {
      result_.peak_level = level_;
      result_.peak_level_time = time_;
    }
    if (outflow > result_.peak_outflow) {
      result_.peak_outflow = outflow;
      result_.peak_outflow_time = time_;
    }
    if (inflow > result_.peak_inflow) {
      result_.peak_inflow = inflow;
      result_.peak_inflow_time = time_;
    }
  }

  /// Lets the settings change as far as the level asks for at this instant.
  Outcome<void> settle() {
    bool rose = false;
    bool fell = false;
    while (true) {
      if (level_ >= stage().up_level && stage_ + 1 < in_.stages.size()) {
        ++stage_;
        rose = true;
      } else if (level_ <= stage().down_level && stage_ > 0) {
        --stage_;
        fell = true;
      } else {
        return {};
      }
      rating_hint_ = 0;
      if ((rose && fell) || ++result_.stage_changes > most_changes) return no_answer(oscillates);
    }
  }

  Step step_from_here(double h) {
    const double area = std::max(in_.storage.area(level_), 1.0);
    const auto rates = [&](const State& state) -> Outcome<State> {
      const double outflow = outflow_at(in_.storage.level_at(state[0] * area, storage_hint_));
      return State{(inflow_at(state[2]) - outflow) / area, outflow / area, 1.0};
    };
    const State start{storage_ / area, 0.0, time_};
    auto step = dormand_prince(start, *rates(start), h, rates);
    step->value[0] *= area;
    step->value[1] *= area;
    return *step;
  }

  double level_after(const Step& step) { return in_.storage.level_at(step.value[0], storage_hint_); }

  void accept(const Step& step, double end) {
    storage_ = step.value[0];
    out_ += step.value[1];
    time_ = end;
    level_ = level_after(step);
  }

  Outcome<void> follow_segment() {
    const double end = in_.time[segment_ + 1];
    if (step_ == 0.0) step_ = end - time_;
    while (time_ < end) {
      const bool last = time_ + step_ >= end * (1.0 - 1e-15) || time_ + 1.000001 * step_ >= end;
      const double h = last ? end - time_ : step_;
      const Step step = step_from_here(h);
      // Fifth order: the step that would just meet the tolerance, with some reserve.
      const double grow = step.error > 0.0 ? 0.9 * std::pow(in_.tolerance / step.error, 0.2) : 5.0;
      if (step.error > in_.tolerance && h > 1e-6) {
        step_ = h * std::clamp(grow, 0.2, 0.9);
        continue;
      }
      if (step.value[0] < in_.storage.storage(in_.storage.lowest_level()) - 1e-6) return no_answer(empties);
      if (!last || grow < 1.0)
        step_ = h * std::clamp(grow, 0.2, 5.0);
      else
        step_ = std::max(step_, h * std::min(grow, 5.0));
      if (auto taken = take(step, h, last ? end : time_ + h); !taken) return taken;
    }
    return {};
  }

  /// Takes the step, or its part up to a change of setting; notes the highest level inside.
  Outcome<void> take(const Step& step, double h, double end) {
    const double level = level_after(step);
    const double limit = level >= stage().up_level     ? stage().up_level
                         : level <= stage().down_level ? stage().down_level
                                                       : level;
    const bool changes = limit != level && (limit == stage().up_level ? stage_ + 1 < in_.stages.size() : stage_ > 0);
    if (changes) {
      const auto part = find_root([&](double part_h) { return level_after(step_from_here(part_h)) - limit; }, 0.0, h, 1e-9 * h);
      const double reached = part ? *part : h;
      accept(step_from_here(reached), time_ + reached);
      level_ = limit;
      record();
      if (auto settled = settle(); !settled) return settled;
      record();
      return {};
    }
    note_crest(step, h);
    accept(step, end);
    return {};
  }

  /// Where inflow and outflow become equal within the step, the level is highest.
  void note_crest(const Step& step, double h) {
    const double level = level_after(step);
    const auto excess = [&](double part_h) {
      const double there = part_h == 0.0 ? level_ : level_after(step_from_here(part_h));
      return inflow_at(time_ + part_h) - outflow_at(there);
    };
    if (!(excess(0.0) > 0.0) || !(inflow_at(time_ + h) - outflow_at(level) < 0.0)) return;
    const auto part = find_root(excess, 0.0, h, 1e-9 * h);
    if (!part || *part <= 0.0) return;
    const Step crest = step_from_here(*part);
    if (level_after(crest) <= result_.peak_level) return;
    const double kept[] = {time_, storage_, level_, out_};
    accept(crest, time_ + *part);
    record();
    time_ = kept[0];
    storage_ = kept[1];
    level_ = kept[2];
    out_ = kept[3];
  }

  void finish() {
    result_.volume_out = out_;
    result_.storage_change = storage_ - start_storage_;
    const double scale = std::max(result_.volume_in, 1e-300);
    result_.balance_error = (result_.volume_in - result_.volume_out - result_.storage_change) / scale;
    result_.storage_extrapolated = result_.peak_level > in_.storage.highest_level();
  }
};

Outcome<void> check_input(const RoutingInput& input) {
  if (input.time.size() < 2 || input.inflow.size() != input.time.size())
    return no_answer("an inflow needs two ordinates or more, each with its time");
  if (input.stages.empty() || input.first_stage >= input.stages.size()) return no_answer("the reservoir has no outflow");
  if (!(input.initial_level >= input.storage.lowest_level()))
    return no_answer("the level before the flood lies below the storage table");
  return {};
}

/// Inflow at a time, straight between the ordinates, going forward.
double inflow_at(const RoutingInput& input, double time, std::size_t& hint) {
  while (hint + 2 < input.time.size() && time > input.time[hint + 1]) ++hint;
  const double share = std::clamp((time - input.time[hint]) / (input.time[hint + 1] - input.time[hint]), 0.0, 1.0);
  return input.inflow[hint] + share * (input.inflow[hint + 1] - input.inflow[hint]);
}

}  // namespace

Outcome<RoutedFlood> route_level_pool(const RoutingInput& input) {
  if (auto fit = check_input(input); !fit) return tl::unexpected(fit.error());
  return Router(input).run();
}

Outcome<RoutedFlood> route_storage_indication(const RoutingInput& input, double dt) {
  if (auto fit = check_input(input); !fit) return tl::unexpected(fit.error());
  const auto& rating = input.stages[input.first_stage].rating;
  RatingTable outflow_of;  // outflow over the indicator 2S/dt + O
  RatingTable level_of;    // level over the same
  for (std::size_t i = 0; i < rating.level.size(); ++i) {
    const double indicator = 2.0 * input.storage.storage(rating.level[i]) / dt + rating.discharge[i];
    if (!outflow_of.level.empty() && !(indicator > outflow_of.level.back())) continue;
    outflow_of.level.push_back(indicator);
    outflow_of.discharge.push_back(rating.discharge[i]);
    level_of.level.push_back(indicator);
    level_of.discharge.push_back(rating.level[i]);
  }
  if (outflow_of.level.size() < 2) return no_answer("the rating has no two levels within the storage table");
  RoutedFlood result;
  std::size_t inflow_hint = 0;
  double time = input.time.front();
  double I = input.inflow.front();
  double O = rating.at(input.initial_level);
  double H = input.initial_level;
  const double start = input.storage.storage(H);
  double indicator = 2.0 * start / dt + O;
  result.peak_level = H;
  result.peak_outflow = O;
  const auto record = [&] {
    result.time.push_back(time);
    result.inflow.push_back(I);
    result.outflow.push_back(O);
    result.level.push_back(H);
    if (H > result.peak_level) {
      result.peak_level = H;
      result.peak_level_time = time;
    }
    if (O > result.peak_outflow) {
      result.peak_outflow = O;
      result.peak_outflow_time = time;
    }
    result.peak_inflow = std::max(result.peak_inflow, I);
  };
  record();
  while (time < input.time.back() - 1e-9 * dt) {
    const double left = indicator - 2.0 * O;  // 2S/dt - O
    if (left < 2.0 * input.storage.storage(input.storage.lowest_level()) / dt - 1e-9 * std::abs(indicator))
      return no_answer("the step is too long for the storage-indication method: 2S/dt - O falls below zero");
    time += dt;
    const double next = inflow_at(input, time, inflow_hint);
    indicator = left + I + next;
    const double before = O;
    O = outflow_of.at(indicator);
    H = level_of.at(indicator);
    result.volume_in += 0.5 * dt * (I + next);
    result.volume_out += 0.5 * dt * (before + O);
    I = next;
    record();
  }
  result.storage_change = 0.5 * dt * (indicator - O) - start;
  result.balance_error = (result.volume_in - result.volume_out - result.storage_change) / std::max(result.volume_in, 1e-300);
  result.storage_extrapolated = result.peak_level > input.storage.highest_level();
  return result;
}

double linear_reservoir_outflow(const LinearReservoirStep& step) noexcept {
  const double share = step.dt / step.K;
  return (share * (step.I1 + step.I2) + (2.0 - share) * step.O1) / (2.0 + share);
}

double drained_lake_head(const DrainedLake& lake) noexcept {
  return std::pow(1.0 / std::sqrt(lake.H0) + lake.c * lake.t / (2.0 * lake.A), -2.0);
}

double third_order_head(const ThirdOrderStep& step) noexcept {
  const auto rise = [&](double share, double H) {
    const double inflow = step.I1 + share * (step.I2 - step.I1);
    return step.dt * (inflow - step.c * std::pow(std::max(0.0, H), 1.5)) / step.A;
  };
  const double first = rise(0.0, step.H);
  const double second = rise(1.0 / 3.0, step.H + first / 3.0);
  const double third = rise(2.0 / 3.0, step.H + 2.0 * second / 3.0);
  return step.H + first / 4.0 + 3.0 * third / 4.0;
}

}  // namespace quell::hydraulics
