#include "supply/play/frontier.hpp"

#include <algorithm>

#include "clinic/in_parallel.hpp"
#include "supply/play/draws.hpp"

namespace sparewell::supply::play {
namespace {

constexpr std::size_t resamples = 400;
constexpr std::uint64_t resampling_seed = 20261;
constexpr double low_point = 0.05;
constexpr double high_point = 0.95;

struct Needs {
  double fill_rate = 0;
  std::optional<double> ours;
  std::optional<double> peer;

  [[nodiscard]] std::optional<double> share() const {
    if (!ours || !peer || !(*peer > 0)) return std::nullopt;
    return 1 - *ours / *peer;
  }
};

Needs needs_of(const Board& board, const Group& group, const std::vector<Setting>& settings,
               const RunsBySetting& runs, double service, Policy ours, const Weights& weights) {
  Needs made;
  std::vector<Outcome> peers;
  std::vector<Outcome> by_cost;
  for (std::size_t i = 0; i < settings.size(); ++i) {
    const bool present = settings[i].policy == Policy::sparewell && settings[i].step == service;
    if (!present && settings[i].policy != Policy::min_max && settings[i].policy != ours) continue;
    const Outcome outcome = outcome_of(board, group, runs[i], weights);
    if (settings[i].policy == Policy::min_max) peers.push_back(outcome);
    if (settings[i].policy == Policy::by_cost) by_cost.push_back(outcome);
    if (!present) continue;
    made.fill_rate = outcome.fill_rate;
    made.ours = outcome.stock;
  }
  made.peer = stock_at(frontier(std::move(peers)), made.fill_rate);
  if (ours == Policy::by_cost) made.ours = stock_at(frontier(std::move(by_cost)), made.fill_rate);
  return made;
}

std::vector<double> drawn_again(std::size_t count, std::size_t resample) {
  std::vector<double> weights(count, 0.0);
  for (std::size_t i = 0; i < count; ++i) {
    const double at = uniform_at(resampling_seed, resample, i) * static_cast<double>(count);
    ++weights[std::min(static_cast<std::size_t>(at), count - 1)];
  }
  return weights;
}

}  // namespace

std::vector<Outcome> frontier(std::vector<Outcome> points) {
  std::ranges::sort(points, [](const Outcome& a, const Outcome& b) {
    return a.stock != b.stock ? a.stock < b.stock : a.fill_rate > b.fill_rate;
  });
  std::vector<Outcome> best;
  for (const Outcome& point : points) {
    if (best.empty() || point.fill_rate > best.back().fill_rate) best.push_back(point);
  }
  return best;
}

std::optional<double> stock_at(const std::vector<Outcome>& frontier, double fill_rate) {
  const auto above = std::ranges::lower_bound(frontier, fill_rate, {}, &Outcome::fill_rate);
  if (above == frontier.end()) return std::nullopt;
  if (above == frontier.begin()) {
    return above->fill_rate == fill_rate ? std::optional{above->stock} : std::nullopt;
  }
  const Outcome& below = *(above - 1);
  const double part = (fill_rate - below.fill_rate) / (above->fill_rate - below.fill_rate);
  return below.stock + part * (above->stock - below.stock);
}

std::optional<Saving> saving_against_min_max(const Board& board, const Group& group,
                                             const std::vector<Setting>& settings,
                                             const RunsBySetting& runs, double service,
                                             Policy ours) {
  const auto all = needs_of(board, group, settings, runs, service, ours, {});
  const auto share = all.share();
  if (!share) return std::nullopt;
  Saving made{all.fill_rate, *all.ours, *all.peer, *share, {}, {}};
  const std::size_t worlds = runs.front().size();
  std::vector<std::optional<double>> shares(resamples);
  in_parallel(resamples, [&](std::size_t i) {
    Weights weights;
    (worlds > 1 ? weights.worlds : weights.items) =
        drawn_again(worlds > 1 ? worlds : group.items.size(), i);
    shares[i] = needs_of(board, group, settings, runs, service, ours, weights).share();
  });
  std::vector<double> known;
  for (const auto& each : shares) {
    if (each) known.push_back(*each);
  }
  // A resample in which the peer does not reach our fill rate says nothing of the share; with many
  // of them the interval would tell only of the rest.
  if (known.size() < resamples * 9 / 10) return made;
  std::ranges::sort(known);
  const auto point = [&](double p) {
    return known[static_cast<std::size_t>(p * static_cast<double>(known.size() - 1) + 0.5)];
  };
  made.low = point(low_point);
  made.high = point(high_point);
  return made;
}

}  // namespace sparewell::supply::play
