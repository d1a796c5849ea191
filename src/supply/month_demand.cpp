#include "supply/month_demand.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <map>
#include <mutex>
#include <optional>

#include "clinic/in_parallel.hpp"
#include "supply/booked.hpp"
#include "supply/clinic_demand.hpp"
#include "supply/common_cause.hpp"
#include "supply/stock_position.hpp"

namespace sparewell::supply {
namespace {

using std::chrono::year_month_day;

Date month_end(std::chrono::year_month month) {
  return Date{month / std::chrono::last};
}

/// What one user adds to a month in which they need `mean` pieces.
Pmf pieces_of(double mean) {
  const double whole = std::floor(std::max(0.0, mean));
  std::vector<double> mass(static_cast<std::size_t>(whole) + 2, 0.0);
  const double rest = std::max(0.0, mean) - whole;
  mass[mass.size() - 2] = 1 - rest;
  mass.back() = rest;
  return Pmf{std::move(mass)};
}

/// What makes up a month's demand: users, and what is independent of them.
class MonthParts {
 public:
  void add_user(Pmf pieces) { users_.push_back(std::move(pieces)); }
  void add(Pmf pieces) { others_.push_back(std::move(pieces)); }
  [[nodiscard]] MonthNeed need(double law_spread) && {
    others_.push_back(with_common_cause(convolve_all(std::move(users_)), law_spread));
    Pmf all = convolve_all(std::move(others_));
    const double mean = all.mean();
    return {mean, std::move(all)};
  }

 private:
  std::vector<Pmf> users_;
  std::vector<Pmf> others_;
};

/// What is booked of one item.
struct Booked {
  std::vector<const Reservation*> bookings;
  std::vector<BookedUse> uses;
};

/// Position of the month in which a piece booked for that day is needed, the first for what is
/// promised or overdue; the number of months when it is later.
std::size_t month_of(const std::optional<Date>& day, const std::vector<Month>& months) {
  const auto found =
      std::ranges::find_if(months, [&](const Month& month) { return !day || *day <= month.to; });
  return static_cast<std::size_t>(found - months.begin());
}

/// The first months in which a unit is left to chance: those before its booked replacement.
std::size_t months_by_chance(const Booked& booked, const wear::LifeOfUnit* unit,
                             const std::vector<Month>& months) {
  const auto found = std::ranges::find(booked.uses, unit, &BookedUse::unit);
  return found == booked.uses.end() ? months.size() : month_of(found->on, months);
}

void add_booked(std::vector<MonthParts>& parts, const Booked& booked,
                const std::vector<Month>& months) {
  for (const Reservation* booking : booked.bookings) {
    const auto month = month_of(booking->needed_on, months);
    if (month < months.size()) parts[month].add(binomial(booking->quantity, 1));
  }
}

/// Mean pieces of one unit in each month; `clock` as wear counts the days until its end.
std::vector<double> means_of(const wear::LifeOfUnit& unit, const std::vector<double>& clock,
                             FreshCountsCache& fresh) {
  std::vector<double> made;
  double before = 0;
  for (const double at : clock) {
    const double until = pmf_of_tails(replacement_tails(unit.life, at, fresh, unit.others)).mean();
    // Rounding may bring a mean that hardly grows a hair below the one before.
    made.push_back(std::max(0.0, until - before));
    before = std::max(before, until);
  }
  return made;
}

void add_users(const DemandSources& sources, const Booked& booked, FreshCountsCache& fresh,
               const std::vector<double>& clock, const std::vector<Month>& months,
               std::vector<MonthParts>& parts) {
  std::vector<std::vector<double>> means;
  std::vector<bool> alone(sources.users.size(), true);
  std::vector<bool> all_by_chance(sources.users.size(), true);
  for (std::size_t user = 0; user < sources.users.size(); ++user) {
    means.push_back(means_of(*sources.users[user], clock, fresh));
    const std::size_t by_chance = months_by_chance(booked, sources.users[user], months);
    all_by_chance[user] = by_chance == months.size();
    std::fill(means[user].begin() + static_cast<std::ptrdiff_t>(by_chance), means[user].end(), 0.0);
  }
  for (const auto& [first, second] : sources.pairs) {
    if (!all_by_chance[first] || !all_by_chance[second]) continue;
    alone[first] = alone[second] = false;
    const auto both = means_of(first_of_two(*sources.users[first]), clock, fresh);
    for (std::size_t i = 0; i < parts.size(); ++i) {
      parts[i].add_user(mix({1 - sources.together, sources.together},
                            {convolve(pieces_of(means[first][i]), pieces_of(means[second][i])),
                             times(2, pieces_of(both[i]))}));
    }
  }
  for (std::size_t user = 0; user < means.size(); ++user) {
    if (!alone[user]) continue;
    for (std::size_t i = 0; i < parts.size(); ++i) parts[i].add_user(pieces_of(means[user][i]));
  }
}

std::vector<MonthNeed> needs_of(const DemandSources& sources, const Booked& booked,
                                FreshCountsCache& fresh, Date today,
                                const std::vector<Month>& months) {
  std::vector<MonthParts> parts(months.size());
  std::vector<double> clock;  // as wear counts the days until the end of each month
  for (const Month& month : months) {
    const int days = days_between(today, month.to);
    clock.push_back(sources.season == nullptr ? days : sources.season->clock(today, days));
  }
  add_users(sources, booked, fresh, clock, months, parts);
  for (std::size_t i = 0; i < months.size(); ++i) {
    // Starts come at a constant rate that is not known exactly: every month has the same law.
    parts[i].add(sources.starts.in(days_between(months[i].from, months[i].to) + 1));
  }
  for (const ChangingFrom& from : sources.changes) {
    double before = 0;
    for (std::size_t i = 0; i < months.size(); ++i) {
      const double until = from.chance(days_between(today, months[i].to));
      parts[i].add(from.pieces(std::clamp(until - before, 0.0, 1.0)));
      before = std::max(before, until);
    }
  }
  add_booked(parts, booked, months);
  std::vector<MonthNeed> made;
  const double law_spread = sources.users.empty() ? 0 : sources.users.front()->law_spread;
  for (auto& part : parts) made.push_back(std::move(part).need(law_spread));
  return made;
}

/// Work is counted in users, which take nearly all of the time.
class Share {
 public:
  explicit Share(const MonthsGoOn& goes_on) : goes_on_{goes_on} {}
  void expect(std::size_t users) { all_ += users + 1; }
  [[nodiscard]] bool stopped() const { return stopped_; }
  void did(std::size_t users) {
    if (!goes_on_) return;
    const std::lock_guard one_at_a_time{mutex_};
    done_ += users + 1;
    if (!stopped_ && !goes_on_(static_cast<double>(done_) / static_cast<double>(all_))) {
      stopped_ = true;
    }
  }

 private:
  const MonthsGoOn& goes_on_;
  std::mutex mutex_;
  std::size_t all_ = 0;
  std::size_t done_ = 0;
  std::atomic<bool> stopped_ = false;
};

}  // namespace

std::vector<Month> months_ahead(Date today, int count) {
  const year_month_day parts{today};
  auto month = parts.year() / parts.month();
  std::vector<Month> made;
  if (month_end(month) > today) made.push_back({today + days{1}, month_end(month)});
  for (int i = 0; i < count; ++i) {
    month += std::chrono::months{1};
    made.push_back({Date{month / 1}, month_end(month)});
  }
  return made;
}

std::vector<ItemMonths> demand_by_month(const Clinic& clinic,
                                        const std::vector<wear::LifeOfUnit>& lives, Date today,
                                        const std::vector<Month>& months,
                                        const MonthsGoOn& goes_on) {
  const ClinicDemand demand{clinic, lives, today};
  const StockBook book{clinic};
  std::map<ItemCode, const Item*> needed;
  Share share{goes_on};
  for (const Item& item : clinic.items) {
    const auto sources = demand.sources(item);
    const bool asked =
        !sources.users.empty() || !sources.changes.empty() || sources.starts.starts > 0 ||
        (!months.empty() && pieces_due(book.reservations(item.code), months.back().to) > 0);
    if (!asked || !needed.emplace(item.code, &item).second) continue;
    share.expect(sources.users.size());
  }
  std::vector<ItemMonths> made;
  std::vector<const Item*> items;
  for (const auto& [code, item] : needed) {
    made.push_back({code, {}});
    items.push_back(item);
  }
  in_parallel(made.size(), [&](std::size_t i) {
    if (share.stopped()) return;
    const auto sources = demand.sources(*items[i]);
    Booked booked{book.reservations(items[i]->code), {}};
    booked.uses = booked_uses(clinic, sources.users, booked.bookings, Date::max());
    made[i].months = needs_of(sources, booked, demand.fresh(), today, months);
    share.did(sources.users.size());
  });
  if (share.stopped()) made.clear();
  return made;
}

}  // namespace sparewell::supply
