#include "supply/stock_course.hpp"

#include <cmath>
#include <functional>
#include <map>
#include <utility>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/play/draws.hpp"

namespace stock_course_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;
using doctest::Approx;

namespace {

/// Laws of demand by day after today, worked out when asked for.
class Demand {
 public:
  using Law = std::function<Pmf(int)>;
  explicit Demand(Law law) : law_{std::move(law)} {}
  const Pmf& operator()(Date day) {
    const int after = days_between(today, day);
    const auto known = laws_.find(after);
    return known != laws_.end() ? known->second : laws_.emplace(after, law_(after)).first->second;
  }

 private:
  Law law_;
  std::map<int, Pmf> laws_;
};

Pmf poisson_law(double mean) {
  std::vector<double> mass{std::exp(-mean)};
  double sum = mass[0];
  for (int n = 1; n <= 20 || sum < 1 - 1e-13; ++n) {
    mass.push_back(mean > 0 ? poisson(n, mean) : 0);
    sum += mass.back();
    if (n > 400) break;
  }
  for (double& each : mass) each /= sum;
  return Pmf{std::move(mass)};
}

CourseParts parts_of(Demand& demand) {
  CourseParts parts;
  parts.today = today;
  parts.demand = [&demand](Date day) -> const Pmf& { return demand(day); };
  return parts;
}

std::vector<Date> each_day(int last) {
  std::vector<Date> made;
  for (int day = 0; day <= last; ++day) made.push_back(today + days{day});
  return made;
}

/// What the end of a day is like, summed over every way in which the days can go.
struct Enumerated {
  std::vector<double> none;
  std::vector<double> mean;
  std::vector<double> waiting;
  std::vector<double> lost;
};

/// A lot, a lasting rest and one order, played by the rules of supply/play/item_play: on each day
/// what was ordered arrives, lots past their use-by date go, one patient asks with chance p.
struct Tiny {
  int lot = 2;
  int use_by = 2;
  int lasting = 1;
  int ordered = 1;
  std::vector<LeadTime::Day> after{{1, 0.5}, {4, 0.5}};
  double p = 0.2;
  int last = 5;

  [[nodiscard]] Enumerated enumerate() const {
    const auto size = static_cast<std::size_t>(last) + 1;
    Enumerated made{std::vector<double>(size), std::vector<double>(size), std::vector<double>(size),
                    std::vector<double>(size)};
    for (const LeadTime::Day& arrival : after) {
      for (unsigned asked = 0; asked < 1U << last; ++asked) {
        double chance = arrival.chance;
        for (int day = 1; day <= last; ++day) chance *= (asked >> (day - 1)) & 1U ? p : 1 - p;
        play(arrival.days, asked, chance, made);
      }
    }
    return made;
  }

  void play(int arrives, unsigned asked, double chance, Enumerated& sums) const {
    int dated = lot;
    int rest = lasting;
    int wait = 0;
    int lost = 0;
    for (int day = 0; day <= last; ++day) {
      if (day == arrives) rest += ordered;
      if (day == use_by + 1) lost += std::exchange(dated, 0);
      if (day > 0 && ((asked >> (day - 1)) & 1U)) ++wait;
      while (wait > 0 && dated + rest > 0) {
        --wait;
        --(dated > 0 ? dated : rest);
      }
      const auto at = static_cast<std::size_t>(day);
      sums.none[at] += dated + rest == 0 ? chance : 0;
      sums.mean[at] += chance * (dated + rest);
      sums.waiting[at] += chance * wait;
      sums.lost[at] += chance * lost;
    }
  }
};

}  // namespace

TEST_CASE("The stock without orders is what Poisson demand leaves") {
  // Closed form: P(stock >= k) = P(N <= s - k), N Poisson with mean rate * t.
  const double rate = 0.15;
  const int there = 9;
  Demand demand{[&](int after) { return poisson_law(rate * after); }};
  auto parts = parts_of(demand);
  parts.lasting = there;
  const auto course = stock_course(parts, {today, today + days{7}, today + days{70}});
  REQUIRE(course.points.size() == 3);
  CHECK(course.with_more.empty());
  CHECK(course.points[0].p10 == there);
  CHECK(course.points[0].p90 == there);
  CHECK(course.points[0].chance_none == 0);
  for (const std::size_t i : {1U, 2U}) {
    const double mean = rate * (i == 1 ? 7 : 70);
    const auto at_most = [&](int n) {
      double sum = 0;
      for (int k = 0; k <= n; ++k) sum += poisson(k, mean);
      return sum;
    };
    const CoursePoint& point = course.points[i];
    CHECK(point.chance_none == Approx(1 - at_most(there - 1)));
    CHECK(point.chance_waiting == Approx(1 - at_most(there)));
    const auto at_least = [&](int k) { return k <= 0 ? 1 : at_most(there - k); };
    CHECK(at_least(point.p50) >= 0.5 - 1e-9);
    CHECK(1 - at_least(point.p10) <= 0.1 + 1e-9);      // P(stock < p10)
    CHECK(1 - at_least(point.p90 + 1) >= 0.9 - 1e-9);  // P(stock <= p90)
    // Nothing comes, so that what is left and what is waited for differ by what was there.
    CHECK(point.mean - point.waiting == Approx(there - mean));
  }
}

TEST_CASE("What goes past its use-by date agrees with every way in which the days can go") {
  // Brute force over all 2^5 sequences of requests and both days of arrival. One request a day at
  // most with the same chance is the process that the course takes demand for, so that both agree
  // to rounding.
  for (const int use_by : {1, 2, 4}) {
    Tiny tiny;
    tiny.use_by = use_by;
    const Enumerated truth = tiny.enumerate();
    Demand demand{[&](int after) { return binomial(after, tiny.p); }};
    auto parts = parts_of(demand);
    parts.lasting = tiny.lasting;
    parts.pieces_a_step = tiny.p;
    parts.dated = {{today + days{use_by}, tiny.lot}};
    parts.coming = {{tiny.ordered, tiny.after}};
    const auto course = stock_course(parts, each_day(tiny.last));
    for (std::size_t day = 0; day < course.points.size(); ++day) {
      CHECK(course.points[day].chance_none == Approx(truth.none[day]));
      CHECK(course.points[day].mean == Approx(truth.mean[day]));
      CHECK(course.points[day].waiting == Approx(truth.waiting[day]));
      CHECK(course.points[day].past_use_by == Approx(truth.lost[day]));
    }
    CHECK(course.past_use_by.front() == Approx(truth.lost.back()));
  }
}

TEST_CASE("One more delivery lifts the stock by what has arrived") {
  // By hand: nothing is needed, four more pieces come after 3 or 10 days with even chances.
  Demand demand{[](int) { return Pmf{}; }};
  auto parts = parts_of(demand);
  parts.lasting = 2;
  const ComingPieces more{4, {{3, 0.5}, {10, 0.5}}};
  const auto course = stock_course(parts, {today, today + days{7}, today + days{14}}, more);
  REQUIRE(course.with_more.size() == 3);
  CHECK(course.with_more[0].p50 == 2);
  CHECK(course.with_more[1].p10 == 2);
  CHECK(course.with_more[1].p90 == 6);
  CHECK(course.with_more[1].mean == Approx(4));
  CHECK(course.with_more[2].p10 == 6);
  CHECK(course.points[2].p90 == 2);
}

TEST_CASE("Certain need is gone from its day on") {
  Demand demand{[](int) { return Pmf{}; }};
  auto parts = parts_of(demand);
  parts.lasting = 3;
  parts.certain = {{today - days{4}, 1}, {today + days{7}, 1}};
  const auto course = stock_course(parts, {today, today + days{6}, today + days{7}});
  // By hand: one is overdue, and one goes on the seventh day.
  CHECK(course.points[0].p50 == 2);
  CHECK(course.points[1].p50 == 2);
  CHECK(course.points[2].p50 == 1);
}

TEST_CASE("The stock agrees with Poisson days played out") {
  // 40,000 plays of 12 weeks by the rules of supply/play/item_play, first expiring first out:
  // standard errors of the chances are below 0.0025, those of the means below 0.02.
  const double rate = 0.2;
  const int last = 84;
  const int lots[] = {6, 5};
  const int use_by[] = {20, 50};
  const int lasting = 6;
  const ComingPieces order{4, {{5, 0.3}, {12, 0.7}}};
  const int plays = 40000;
  std::vector<double> none(last + 1);
  std::vector<double> mean(last + 1);
  double lost[] = {0, 0};
  const auto play_one = [&](std::uint64_t play) {
    int left[] = {lots[0], lots[1]};
    int rest = lasting;
    int waiting = 0;
    const int arrives = order.after[play::uniform_at(3, play, 1000) < 0.3 ? 0 : 1].days;
    for (int day = 0; day <= last; ++day) {
      if (day == arrives) rest += order.pieces;
      for (const int lot : {0, 1}) {
        if (day == use_by[lot] + 1) lost[lot] += std::exchange(left[lot], 0);
      }
      double u = play::uniform_at(5, play, static_cast<std::uint64_t>(day));
      for (int n = 0; day > 0 && (u -= poisson(n, rate)) > 0; ++n) ++waiting;
      while (waiting > 0 && left[0] + left[1] + rest > 0) {
        --waiting;
        --(left[0] > 0 ? left[0] : left[1] > 0 ? left[1] : rest);
      }
      const int there = left[0] + left[1] + rest;
      none[static_cast<std::size_t>(day)] += there == 0 ? 1.0 / plays : 0;
      mean[static_cast<std::size_t>(day)] += static_cast<double>(there) / plays;
    }
  };
  for (int play = 0; play < plays; ++play) play_one(static_cast<std::uint64_t>(play));

  Demand demand{[&](int after) { return poisson_law(rate * after); }};
  auto parts = parts_of(demand);
  parts.lasting = lasting;
  parts.dated = {{today + days{use_by[0]}, lots[0]}, {today + days{use_by[1]}, lots[1]}};
  parts.coming = {order};
  std::vector<Date> weeks;
  for (int day = 0; day <= last; day += 7) weeks.push_back(today + days{day});
  const auto course = stock_course(parts, weeks);
  for (std::size_t week = 0; week < weeks.size(); ++week) {
    CHECK(std::abs(course.points[week].chance_none - none[7 * week]) < 0.012);
    CHECK(std::abs(course.points[week].mean - mean[7 * week]) < 0.08);
  }
  CHECK(std::abs(course.past_use_by[0] - lost[0] / plays) < 0.05);
  CHECK(std::abs(course.past_use_by[1] - lost[1] / plays) < 0.05);
}

}  // namespace stock_course_test
