#include "supply/restock.hpp"

#include <cmath>
#include <random>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/transfer.hpp"

namespace restock_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;
using doctest::Approx;

namespace {

/// Users with exponential lives, so that what each place needs is Poisson, for ever at one rate.
struct TwoBranches {
  TwoBranches(double main_rate, double north_rate) {
    add_users("M", "", main_rate);
    add_users("N", "North", north_rate);
  }
  void add_users(const std::string& start, const std::string& place, double rate) {
    constexpr int users = 10;
    for (int i = 0; i < users; ++i) {
      Patient patient;
      patient.ref = {fmt::format("{}{}", start, i)};
      patient.place = place;
      clinic.patients.push_back(patient);
      add_unit(clinic, lives, patient.ref.text, 10, 1.0, users / rate);
    }
  }
  [[nodiscard]] std::vector<RestockMove> moves(const RestockQuestion& question = {}) const {
    return restock(clinic, PlaceDemand{clinic, lives, today}, question);
  }
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
};

double chance_of_more(int pieces, double mean) {
  double sum = 0;
  for (int n = 0; n <= pieces; ++n) sum += poisson(n, mean);
  return 1 - sum;
}

}  // namespace

TEST_CASE("Pieces go to the branch that runs out, with the reason in numbers") {
  TwoBranches made{0.02, 0.2};
  add_stock(made.clinic, 4);
  const auto moves = made.moves();
  REQUIRE(moves.size() == 1);
  const RestockMove& move = moves[0];
  CHECK(move.item.text == "L1");
  CHECK(move.from.place == "main store");
  CHECK(move.to.place == "North");
  CHECK(move.to.until == today + days{8});
  CHECK(move.transit_days == 1);
  // Poisson laws with 8 days' use: 0.16 at the main store, 1.6 at North. The third piece helps by
  // P(N > 2) = 0.217 there and costs P(N > 1) = 0.011 here, the fourth by 0.079 less P(N > 0) =
  // 0.148 here.
  CHECK(move.quantity == 3);
  CHECK(move.from.expected == Approx(0.16).epsilon(1e-4));
  CHECK(move.to.expected == Approx(1.6).epsilon(1e-4));
  CHECK(move.to.chance_short_before == Approx(chance_of_more(0, 1.6)).epsilon(1e-4));
  CHECK(move.to.chance_short_after == Approx(chance_of_more(3, 1.6)).epsilon(1e-4));
  CHECK(move.from.chance_short_before == Approx(chance_of_more(4, 0.16)).epsilon(1e-3));
  CHECK(move.from.chance_short_after == Approx(chance_of_more(1, 0.16)).epsilon(1e-3));
  CHECK(move.missing_after < move.missing_before - 3 * least_move_gain);
  REQUIRE(move.needs.size() == 10);
  CHECK(move.needs[0].patient.text == "N0");
  CHECK(move.needs[0].chance == Approx(1 - std::exp(-0.02 * 8)).epsilon(1e-4));
}

TEST_CASE("Nothing moves in a clinic with one place, or where all lies well") {
  TwoBranches made{0.02, 0.2};
  for (Patient& patient : made.clinic.patients) patient.place.clear();
  add_stock(made.clinic, 4);
  CHECK(made.moves().empty());
  TwoBranches even{0.1, 0.1};
  add_stock(even.clinic, 3);
  add_stock(even.clinic, 3, {}, "North");
  CHECK(even.moves().empty());
}

TEST_CASE("What is held back, away, promised, under way or expires too soon does not move") {
  TwoBranches made{0.001, 0.2};
  made.clinic.places = {transit_place("North"), loan_place(), supplier_place("Example Supplies")};
  add_stock(made.clinic, 5, {}, "quarantine");
  add_stock(made.clinic, 5, {}, "on loan");
  add_stock(made.clinic, 5, {}, "at supplier Example Supplies");
  add_stock(made.clinic, 5, today + days{7}, "main store", "SOON");
  CHECK(made.moves().empty());
  add_stock(made.clinic, 2);
  CHECK(made.moves().at(0).quantity == 2);
  made.clinic.reservations = {{{"M1"}, {"L1"}, "main store", 1, {}}};
  CHECK(made.moves().at(0).quantity == 1);
  // Booked for a visit that lies further ahead than the next round.
  made.clinic.reservations[0].needed_on = today + days{60};
  CHECK(made.moves().at(0).quantity == 2);
  // What is on its way there counts there.
  made.clinic.reservations.clear();
  add_stock(made.clinic, 5, {}, "in transit to North");
  CHECK(made.moves().empty());
}

TEST_CASE("A piece that is promised at a branch and lies elsewhere is sent there") {
  TwoBranches made{0.001, 0.001};
  add_stock(made.clinic, 2);
  made.clinic.reservations = {{{"N1"}, {"L1"}, "North", 1, {}}};
  const auto moves = made.moves();
  REQUIRE(moves.size() == 1);
  CHECK(moves[0].quantity == 1);
  CHECK(moves[0].to.reserved == 1);
  CHECK(moves[0].to.chance_short_before == Approx(1));
}

TEST_CASE("The lot that must be used first is sent, several lots where one does not suffice") {
  TwoBranches made{0.001, 0.2};
  add_stock(made.clinic, 2, today + days{400}, "main store", "LATE");
  add_stock(made.clinic, 1, today + days{100}, "main store", "EARLY");
  const auto moves = made.moves();
  REQUIRE(moves.size() == 1);
  REQUIRE(moves[0].lots.size() == 2);
  CHECK(moves[0].lots[0].lot.lot == "EARLY");
  CHECK(moves[0].lots[1].lot.lot == "LATE");
  CHECK(moves[0].lots[0].quantity + moves[0].lots[1].quantity == moves[0].quantity);
}

TEST_CASE("Two branches that send one lot, and one lot for two branches, are never sent twice") {
  TwoBranches made{0.2, 0.2};
  made.add_users("S", "South", 0.2);
  add_stock(made.clinic, 6, {}, "West");
  const auto moves = made.moves();
  REQUIRE(moves.size() == 3);
  int sent = 0;
  for (const auto& move : moves) {
    CHECK(move.from.place == "West");
    for (const auto& level : move.lots) sent += level.quantity;
  }
  CHECK(sent == 6);
}

TEST_CASE("Items that are ordered per patient stay where they were put") {
  TwoBranches made{0.001, 0.2};
  add_stock(made.clinic, 4);
  made.clinic.items[0].stocked = false;
  CHECK(made.moves().empty());
}

TEST_CASE("Expected missing pieces are those of demand drawn at random") {
  TwoBranches made{0.05, 0.25};
  add_stock(made.clinic, 4);
  const auto moves = made.moves();
  REQUIRE(moves.size() == 1);
  const int sent = moves[0].quantity;
  std::mt19937 random{7};
  std::poisson_distribution<int> main_need{0.05 * 8};
  std::poisson_distribution<int> north_need{0.25 * 8};
  constexpr int rounds = 200'000;
  double before = 0;
  double after = 0;
  for (int i = 0; i < rounds; ++i) {
    const int here = main_need(random);
    const int there = north_need(random);
    before += std::max(0, here - 4) + there;
    after += std::max(0, here - 4 + sent) + std::max(0, there - sent);
  }
  // Four standard errors of a mean whose terms have a standard deviation below 2.
  const double error = 4 * 2 / std::sqrt(rounds);
  CHECK(std::abs(before / rounds - moves[0].missing_before) < error);
  CHECK(std::abs(after / rounds - moves[0].missing_after) < error);
}

TEST_CASE("Weeks played out: with the moves far fewer pieces are missing at the branches") {
  // The main store receives each week what was used in all; the branches are sent nothing, are
  // filled up to three pieces each, or are sent what is proposed. What is missing is brought by an
  // express service and counted.
  enum Way { nothing, filled_up, proposed };
  constexpr int branch_level = 3;
  constexpr int stock = 9;  // pieces in all; 2.1 are needed in a week
  TwoBranches made{0.1, 0.15};
  made.add_users("S", "South", 0.05);
  const PlaceDemand demand{made.clinic, made.lives, today};
  const auto& branches = demand.branches();
  const double rates[] = {0.1, 0.15, 0.05};
  std::mt19937 random{11};
  int missing[3] = {0, 0, 0};
  int moved[3] = {0, 0, 0};
  int needed = 0;
  for (int play = 0; play < 40; ++play) {
    std::vector<int> shelves[3] = {{3, 3, 3}, {3, 3, 3}, {3, 3, 3}};
    for (int week = 0; week < 12; ++week) {
      std::vector<int> arriving[3] = {{0, 0, 0}, {0, 0, 0}, {0, 0, 0}};
      const auto send = [&](Way way, std::size_t from, std::size_t to, int pieces) {
        shelves[way][from] -= pieces;
        arriving[way][to] += pieces;
        moved[way] += pieces;
      };
      for (std::size_t p = 1; p < 3; ++p) {
        send(filled_up, 0, p,
             std::min(shelves[filled_up][0], branch_level - shelves[filled_up][p]));
      }
      made.clinic.shelf.clear();
      for (std::size_t p = 0; p < 3; ++p) {
        add_stock(made.clinic, shelves[proposed][p], {}, branches.names()[p]);
      }
      for (const auto& move : restock(made.clinic, demand, {})) {
        send(proposed, *branches.position(move.from.place), *branches.position(move.to.place),
             move.quantity);
      }
      for (std::size_t p = 0; p < 3; ++p) {
        // One day on the way, then the rest of the week.
        for (const int length : {1, 6}) {
          const int need = std::poisson_distribution<int>{rates[p] * length}(random);
          needed += need;
          for (const Way way : {nothing, filled_up, proposed}) {
            const int served = std::min(need, shelves[way][p]);
            shelves[way][p] -= served;
            missing[way] += need - served;
            if (length == 1) shelves[way][p] += arriving[way][p];
          }
        }
      }
      for (auto& shelf : shelves) shelf[0] += stock - shelf[0] - shelf[1] - shelf[2];
    }
  }
  CAPTURE(needed);
  CAPTURE(missing[nothing]);
  CAPTURE(missing[filled_up]);
  CAPTURE(missing[proposed]);
  CAPTURE(moved[filled_up]);
  CAPTURE(moved[proposed]);
  CHECK(missing[proposed] * 5 < missing[nothing]);
  CHECK(missing[proposed] * 20 < needed);
  CHECK(missing[proposed] <= missing[filled_up]);
}

TEST_CASE("The days that transfers take are learned from the ledger") {
  const Lot lot{{"L1"}, "A", {}};
  std::vector<StockMovement> ledger;
  const auto carry_over = [&](const std::string& from, const std::string& to, int pieces, int day) {
    ledger.push_back({lot, from, MovementKind::transfer, -pieces, today + days{day}, ""});
    ledger.push_back({lot, to, MovementKind::transfer, pieces, today + days{day}, ""});
  };
  CHECK(TransitDays{}.to("North") == assumed_transit_days);
  carry_over("main store", "in transit to North", 3, 0);
  CHECK(TransitDays{ledger}.seen("North") == 0);
  carry_over("in transit to North", "North", 2, 3);
  carry_over("in transit to North", "North", 1, 4);
  CHECK(TransitDays{ledger}.to("North") == 4);  // (3 + 4) / 2, halves up
  CHECK(TransitDays{ledger}.seen("North") == 2);
  CHECK(TransitDays{ledger}.to("South") == 4);  // of all, while nothing has arrived there
  // Taken back: it went where it came from, and nothing arrived.
  carry_over("main store", "in transit to South", 1, 0);
  carry_over("in transit to South", "main store", 1, 9);
  CHECK(TransitDays{ledger}.to("South") == 4);
  carry_over("main store", "in transit to South", 1, 10);
  carry_over("in transit to South", "South", 1, 11);
  CHECK(TransitDays{ledger}.to("South") == 1);
  CHECK(TransitDays{ledger}.to("North") == 4);
}

}  // namespace restock_test
