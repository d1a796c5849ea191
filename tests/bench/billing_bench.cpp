// How long it takes to compare what was handed out with what was billed, beside SQLite and a merge
// of sorted lists, which find only what agrees exactly.
#include <algorithm>
#include <string>
#include <tuple>
#include <vector>

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include "bench/best_seconds.hpp"
#include "billing/books_made.hpp"
#include "billing/reconcile_claims.hpp"

namespace {

using namespace sparewell;

/// Patient, side, code and day.
using Key = std::tuple<std::string, int, std::string, int>;

int number_of(Date day) {
  return static_cast<int>(day.time_since_epoch().count());
}

struct Keys {
  std::vector<Key> units;
  std::vector<std::pair<Key, int>> lines;  ///< with the quantity
};

Keys keys_of(const Clinic& clinic) {
  const ClinicIndex index{clinic};
  Keys keys;
  for (const auto& unit : clinic.units) {
    keys.units.emplace_back(unit.patient.text, static_cast<int>(unit.side),
                            index.item(unit.item)->billing_code, number_of(unit.issued_on));
  }
  for (const auto& line : clinic.claim_lines) {
    const int side = line.side ? static_cast<int>(*line.side) : -1;
    keys.lines.emplace_back(Key{line.patient.text, side, line.code, number_of(line.service_date)},
                            line.takes_back() ? -line.quantity : line.quantity);
  }
  return keys;
}

void fill(SQLite::Database& database, const Keys& keys) {
  database.exec(
      "CREATE TABLE units (patient TEXT, side INTEGER, code TEXT, day INTEGER);"
      "CREATE TABLE lines (patient TEXT, side INTEGER, code TEXT, day INTEGER, quantity INTEGER)");
  SQLite::Transaction whole{database};
  const auto add = [](SQLite::Statement& insert, const Key& key) {
    insert.bind(1, std::get<0>(key));
    insert.bind(2, std::get<1>(key));
    insert.bind(3, std::get<2>(key));
    insert.bind(4, std::get<3>(key));
  };
  SQLite::Statement unit{database, "INSERT INTO units VALUES (?, ?, ?, ?)"};
  for (const auto& key : keys.units) {
    add(unit, key);
    unit.exec();
    unit.reset();
  }
  SQLite::Statement line{database, "INSERT INTO lines VALUES (?, ?, ?, ?, ?)"};
  for (const auto& [key, quantity] : keys.lines) {
    add(line, key);
    line.bind(5, quantity);
    line.exec();
    line.reset();
  }
  whole.commit();
  database.exec(
      "CREATE INDEX units_by ON units (patient, side, code, day);"
      "CREATE INDEX lines_by ON lines (patient, side, code, day)");
}

/// Groups that do not agree exactly: other quantities, and those without a counterpart.
int differences_by_query(SQLite::Database& database) {
  SQLite::Statement query{
      database,
      "WITH u AS (SELECT patient, side, code, day, count(*) n FROM units GROUP BY 1, 2, 3, 4), "
      "l AS (SELECT patient, side, code, day, sum(quantity) n FROM lines GROUP BY 1, 2, 3, 4 "
      "HAVING sum(quantity) <> 0) "
      "SELECT (SELECT count(*) FROM u JOIN l USING (patient, side, code, day) WHERE u.n <> l.n) "
      "+ (SELECT count(*) FROM u WHERE NOT EXISTS (SELECT 1 FROM lines x WHERE x.patient = "
      "u.patient AND x.side = u.side AND x.code = u.code AND x.day = u.day)) "
      "+ (SELECT count(*) FROM l WHERE NOT EXISTS (SELECT 1 FROM units x WHERE x.patient = "
      "l.patient AND x.side = l.side AND x.code = l.code AND x.day = l.day))"};
  query.executeStep();
  return query.getColumn(0).getInt();
}

int differences_by_merge(const Keys& keys) {
  std::vector<std::pair<Key, int>> all;
  all.reserve(keys.units.size() + keys.lines.size());
  for (const auto& key : keys.units) all.emplace_back(key, 1);
  for (const auto& [key, quantity] : keys.lines) all.emplace_back(key, -quantity);
  std::ranges::sort(all, {}, &std::pair<Key, int>::first);
  int differences = 0;
  for (std::size_t i = 0; i < all.size();) {
    int balance = 0;
    std::size_t next = i;
    while (next < all.size() && all[next].first == all[i].first) balance += all[next++].second;
    differences += balance == 0 ? 0 : 1;
    i = next;
  }
  return differences;
}

}  // namespace

int main() {
  const auto made = test::make_books(20261125, {10'000, 4, true, true});
  const auto codes = test::test_codes();
  const auto rules = test::test_rules();
  const auto keys = keys_of(made.clinic);
  std::size_t findings = 0;
  std::size_t pairs = 0;
  const double ours = bench::best_seconds(3, [&] {
    const auto books = billing::reconcile_claims(made.clinic, codes, rules, test::books_today);
    findings = books.findings.size();
    pairs = books.pairs.size();
  });
  SQLite::Database database{":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
  const double filling = bench::best_seconds(1, [&] { fill(database, keys); });
  int by_query = 0;
  const double query = bench::best_seconds(3, [&] { by_query = differences_by_query(database); });
  int by_merge = 0;
  const double merge = bench::best_seconds(3, [&] { by_merge = differences_by_merge(keys); });
  fmt::print("{} patients, {} units, {} claim lines, {} errors planted\n",
             made.clinic.patients.size(), made.clinic.units.size(), made.clinic.claim_lines.size(),
             made.planted.size());
  fmt::print("ours: {:.3f} s, {} pairs, {} findings of every kind\n", ours, pairs, findings);
  fmt::print(
      "SQLite, exact agreement only: {:.3f} s after {:.3f} s of filling, {} differences; "
      "ratio {:.1f}, with the filling {:.1f}\n",
      query, filling, by_query, ours / query, ours / (query + filling));
  fmt::print("sorted merge, exact agreement only: {:.3f} s, {} differences; ratio {:.1f}\n", merge,
             by_merge, ours / merge);
  return findings == made.planted.size() ? 0 : 1;
}
