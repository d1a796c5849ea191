#include "supply/stock_course.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

namespace sparewell::supply {
namespace {

using Masses = std::vector<double>;

/// Chances below this are not followed any further.
constexpr double nothing = 1e-14;

/// Pieces that went past their use-by date, with the joint chances of those needed by then.
struct Branch {
  int lost = 0;
  Masses needed;
};

Masses cumulated(const Pmf& pmf, std::size_t size) {
  Masses made = pmf.mass();
  made.resize(std::max(size, made.size()), 0.0);
  std::partial_sum(made.begin(), made.end(), made.begin());
  return made;
}

/// Moves what has come to n in one law to where the same share of another law has come.
class Flow {
 public:
  Flow(const Masses& from, const Masses& to) {
    std::size_t m = 0;
    double before = 0;
    for (std::size_t n = 0; n < from.size(); ++n) {
      const double mass = from[n] - before;
      if (mass < nothing) {
        starts_.push_back(moves_.size());
        before = std::max(before, from[n]);
        moves_.push_back({std::min(std::max(m, n), to.size() - 1), 1});
        continue;
      }
      starts_.push_back(moves_.size());
      double at = before;
      while (m + 1 < to.size() && to[m] <= at) ++m;
      while (at < from[n]) {
        const bool last = m + 1 == to.size();
        const double until = last ? from[n] : std::min(from[n], to[m]);
        if (until > at) moves_.push_back({m, (until - at) / mass});
        at = std::max(at, until);
        if (at < from[n] && !last) ++m;
      }
      before = from[n];
    }
    starts_.push_back(moves_.size());
  }

  void apply(Masses& masses, Masses& room) const {
    room.assign(masses.size(), 0.0);
    for (std::size_t n = 0; n < masses.size(); ++n) {
      if (masses[n] == 0) continue;
      for (std::size_t i = starts_[n]; i < starts_[n + 1]; ++i) {
        room[moves_[i].to] += masses[n] * moves_[i].share;
      }
    }
    masses.swap(room);
  }

 private:
  struct Move {
    std::size_t to;
    double share;
  };
  std::vector<Move> moves_;
  std::vector<std::size_t> starts_;
};

/// From one law of what is needed to a later one.
void go_on(std::vector<Branch>& branches, const Pmf& from, const Pmf& to, std::size_t size,
           double pieces_a_step) {
  const Masses start = cumulated(from, size);
  const Masses end = cumulated(to, size);
  const double grown = to.mean() - from.mean();
  const int steps = std::max(1, static_cast<int>(std::ceil(grown / pieces_a_step - 1e-9)));
  Masses last = start;
  Masses next(size);
  Masses room;
  for (int step = 1; step <= steps; ++step) {
    const double share = static_cast<double>(step) / steps;
    for (std::size_t n = 0; n < size; ++n) next[n] = start[n] + share * (end[n] - start[n]);
    const Flow flow{last, next};
    for (Branch& branch : branches) flow.apply(branch.needed, room);
    last.swap(next);
  }
}

/// At the end of a use-by date: of the first `first` pieces to be used nothing may be left. Gives
/// the pieces that are lost on average.
double expire(std::vector<Branch>& branches, int first, int certain) {
  std::vector<Branch> made;
  double mean = 0;
  const auto branch_of = [&](int lost, std::size_t size) -> Masses& {
    const auto found = std::ranges::find(made, lost, &Branch::lost);
    if (found != made.end()) return found->needed;
    made.push_back({lost, Masses(size, 0.0)});
    return made.back().needed;
  };
  for (const Branch& branch : branches) {
    for (std::size_t n = 0; n < branch.needed.size(); ++n) {
      const double mass = branch.needed[n];
      if (mass < nothing) continue;
      const int left = std::max(0, first - branch.lost - certain - static_cast<int>(n));
      branch_of(branch.lost + left, branch.needed.size())[n] += mass;
      mean += mass * left;
    }
  }
  branches = std::move(made);
  return mean;
}

int certain_by(const CourseParts& parts, Date day) {
  int pieces = 0;
  for (const CertainNeed& need : parts.certain) {
    if (std::max(need.on, parts.today) <= day) pieces += need.pieces;
  }
  return pieces;
}

Pmf arrived_by(const CourseParts& parts, const std::optional<ComingPieces>& more, Date day) {
  const int after = days_between(parts.today, day);
  std::vector<Pmf> made;
  const auto add = [&](const ComingPieces& coming) {
    double chance = 0;
    for (const auto& each : coming.after) {
      if (each.days <= after) chance += each.chance;
    }
    if (coming.pieces > 0 && chance > 0) {
      made.push_back(times(coming.pieces, binomial(1, std::min(1.0, chance))));
    }
  };
  for (const ComingPieces& coming : parts.coming) add(coming);
  if (more) add(*more);
  return convolve_all(std::move(made));
}

/// The stock when `gone` pieces are needed or lost by then, of so many and those that arrived.
CoursePoint point_of(Date on, int there, const Masses& gone, const Pmf& arrived) {
  const auto& coming = arrived.mass();
  const auto most = static_cast<std::size_t>(std::max(0, there)) + coming.size();
  Masses stock(most, 0.0);
  CoursePoint made{on};
  for (std::size_t a = 0; a < coming.size(); ++a) {
    if (coming[a] == 0) continue;
    for (std::size_t n = 0; n < gone.size(); ++n) {
      const double mass = coming[a] * gone[n];
      const int left = there + static_cast<int>(a) - static_cast<int>(n);
      stock[static_cast<std::size_t>(std::max(0, left))] += mass;
      if (left >= 0) continue;
      made.chance_waiting += mass;
      made.waiting -= mass * left;
    }
  }
  const double all = std::accumulate(stock.begin(), stock.end(), 0.0);
  for (double& mass : stock) mass /= all;
  const Pmf law{std::move(stock)};
  made.p10 = law.least_covering(0.1);
  made.p25 = law.least_covering(0.25);
  made.p50 = law.least_covering(0.5);
  made.p75 = law.least_covering(0.75);
  made.p90 = law.least_covering(0.9);
  made.mean = law.mean();
  made.chance_none = law.at_most(0);
  return made;
}

/// Dates on which the law of demand is looked at: those asked for, use-by dates before the last of
/// them, and days between that are close enough for a law to turn smoothly into the next.
std::set<Date> days_to_follow(const CourseParts& parts, const std::vector<Date>& on) {
  std::set<Date> made{on.begin(), on.end()};
  const Date last = on.back();
  const double daily = parts.demand(last).mean() / std::max(1, days_between(parts.today, last));
  constexpr double pieces_between = 0.5;
  constexpr int longest = 7;
  const int step = daily * longest <= pieces_between
                       ? longest
                       : std::max(1, static_cast<int>(pieces_between / daily));
  for (Date day = parts.today + days{step}; day < last; day += days{step}) made.insert(day);
  for (const DatedPieces& lot : parts.dated) {
    if (lot.use_by < last) made.insert(std::max(lot.use_by, parts.today));
  }
  made.erase(parts.today);
  return made;
}

}  // namespace

StockCourse stock_course(const CourseParts& parts, const std::vector<Date>& on,
                         const std::optional<ComingPieces>& more) {
  StockCourse made;
  made.past_use_by.assign(parts.dated.size(), 0.0);
  if (on.empty()) return made;
  int there = parts.lasting;
  for (const DatedPieces& lot : parts.dated) there += lot.pieces;

  const auto add_point = [&](Date day, const Masses& gone, double lost) {
    const int left = there - certain_by(parts, day);
    made.points.push_back(point_of(day, left, gone, arrived_by(parts, std::nullopt, day)));
    made.points.back().past_use_by = lost;
    if (!more) return;
    made.with_more.push_back(point_of(day, left, gone, arrived_by(parts, more, day)));
    made.with_more.back().past_use_by = lost;
  };

  const bool any_lost = std::ranges::any_of(
      parts.dated, [&](const DatedPieces& lot) { return lot.use_by < on.back(); });
  if (!any_lost) {
    for (const Date day : on) add_point(day, parts.demand(day).mass(), 0);
    return made;
  }

  std::vector<std::size_t> by_date(parts.dated.size());
  std::iota(by_date.begin(), by_date.end(), std::size_t{0});
  std::ranges::stable_sort(by_date, {}, [&](std::size_t i) { return parts.dated[i].use_by; });
  const auto follow = days_to_follow(parts, on);
  std::size_t size = 0;
  for (const Date day : follow) size = std::max(size, parts.demand(day).mass().size());
  std::vector<Branch> branches{{0, Masses(size, 0.0)}};
  branches[0].needed[0] = 1;
  double lost = 0;
  int first = 0;
  std::size_t next_lot = 0;
  const auto expire_until = [&](Date day) {  // lots whose use-by date is no later
    for (; next_lot < by_date.size() && parts.dated[by_date[next_lot]].use_by <= day; ++next_lot) {
      const DatedPieces& lot = parts.dated[by_date[next_lot]];
      first += lot.pieces;
      const double mean = expire(branches, first, certain_by(parts, day));
      made.past_use_by[by_date[next_lot]] = mean;
      lost += mean;
    }
  };
  // Where very many are needed larger steps do, because a piece matters less.
  constexpr int most_steps = 2000;
  const double pieces_a_step =
      std::max(parts.pieces_a_step, parts.demand(on.back()).mean() / most_steps);
  const Pmf none;
  const Pmf* before = &none;
  std::size_t next = 0;
  const auto add_points = [&](Date day) {
    for (; next < on.size() && on[next] == day; ++next) {
      Masses gone;
      for (const Branch& branch : branches) {
        const auto by = static_cast<std::size_t>(branch.lost);
        gone.resize(std::max(gone.size(), branch.needed.size() + by), 0.0);
        for (std::size_t n = 0; n < branch.needed.size(); ++n) gone[n + by] += branch.needed[n];
      }
      add_point(day, gone, lost);
    }
  };
  add_points(parts.today);
  if (on.back() > parts.today) expire_until(parts.today);
  for (const Date day : follow) {
    const Pmf& now = parts.demand(day);
    go_on(branches, *before, now, size, pieces_a_step);
    before = &now;
    add_points(day);
    if (day < on.back()) expire_until(day);
  }
  return made;
}

}  // namespace sparewell::supply
