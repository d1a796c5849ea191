#include "desk/substance_table.hpp"

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include "desk/suspension_table.hpp"
#include "exchange/csv_reader.hpp"

namespace substance_table_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

/// The rows of resources/substances/relations.csv.
std::vector<std::vector<std::string>> relations() {
  std::ifstream in{std::filesystem::path{SPAREWELL_SOURCE_DIR} /
                   "resources/substances/relations.csv"};
  std::ostringstream text;
  text << in.rdbuf();
  std::vector<std::vector<std::string>> rows;
  exchange::read_csv(text.str(), ',', [&](const exchange::CsvRow& row) {
    rows.emplace_back(row.fields.begin(), row.fields.end());
    return true;
  });
  rows.erase(rows.begin());
  return rows;
}

/// Pairs that SQLite's recursive query reaches; with `residues` over "may contain" too.
std::set<std::pair<std::string, std::string>> reached(SQLite::Database& database, bool residues) {
  SQLite::Statement query{database,
                          residues
                              ? "WITH RECURSIVE way(a, b) AS (SELECT a, b FROM step UNION "
                                "SELECT way.a, step.b FROM way JOIN step ON step.a = way.b) "
                                "SELECT a, b FROM way"
                              : "WITH RECURSIVE sure(a, b) AS (SELECT a, b FROM step WHERE may = 0), "
                                "way(a, b) AS (SELECT a, b FROM sure UNION "
                                "SELECT way.a, sure.b FROM way JOIN sure ON sure.a = way.b) "
                                "SELECT a, b FROM way"};
  std::set<std::pair<std::string, std::string>> made;
  while (query.executeStep()) {
    made.emplace(query.getColumn(0).getString(), query.getColumn(1).getString());
  }
  return made;
}

}  // namespace

// Checked against another engine: the transitive closure by SQLite's recursive common table
// expression (https://www.sqlite.org/lang_with.html, from memory).
TEST_CASE("every pair of substances is related just where a recursive query reaches it") {
  SQLite::Database database{":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
  database.exec("CREATE TABLE step (a TEXT, b TEXT, may INTEGER)");
  std::set<std::string> names;
  for (const auto& row : relations()) {
    SQLite::Statement insert{database, "INSERT INTO step VALUES (?, ?, ?)"};
    insert.bind(1, row[0]);
    insert.bind(2, row[2]);
    insert.bind(3, row[1] == "may contain" ? 1 : 0);
    insert.exec();
    if (row[1] == "same as") {
      SQLite::Statement back{database, "INSERT INTO step VALUES (?, ?, 0)"};
      back.bind(1, row[2]);
      back.bind(2, row[0]);
      back.exec();
    }
    names.insert({row[0], row[2]});
  }
  const auto sure = reached(database, false);
  const auto all = reached(database, true);
  const auto& substances = built_in_substances().substances;
  int checked = 0;
  for (const auto& from : names) {
    for (const auto& to : names) {
      if (from == to) continue;
      const auto path = substances.path(from, to);
      const bool is_sure = !path.empty() && path.front().certain();
      CAPTURE(from);
      CAPTURE(to);
      REQUIRE(is_sure == sure.contains({from, to}));
      REQUIRE(path.empty() == !all.contains({from, to}));
      ++checked;
    }
  }
  CHECK(checked > 5000);
}

TEST_CASE("what the clinic adds is found until it is withdrawn") {
  const Date day = make_date(2026, 11, 25);
  Clinic clinic;
  CHECK(substances_of(clinic, day).get() == &built_in_substances());
  clinic.substances = {{"moss oil", SubstanceRelation::is_a, "mineral oil", "maker's letter"}};
  CHECK_FALSE(built_in_substances().substances.knows("moss oil"));
  const auto table = substances_of(clinic, day);
  CHECK(table->substances.path("moss oil", "petrolatum-type hydrocarbons").size() == 1);
  CHECK(table->contents.size() == built_in_substances().contents.size());
  clinic.substances[0].withdrawn_on = day;
  CHECK_FALSE(substances_of(clinic, day)->substances.knows("moss oil"));
}

TEST_CASE("the rules of suspension are read whole") {
  const auto& rules = built_in_chain_rules();
  using F = std::vector<care::Function>;
  CHECK(rules.way_of(Suspension::pin, {})->needed ==
        F{care::Function::locking_liner, care::Function::pin, care::Function::lock});
  CHECK(rules.way_of(Suspension::suction, {})->way == "sleeve");
  CHECK(rules.way_of(Suspension::suction, F{care::Function::sealing_liner})->way == "seal");
  CHECK(rules.way_of(Suspension::belt, {})->needed.empty());
  CHECK(rules.threaded.size() == 3);
  CHECK_FALSE(rules.materials.empty());
  // Every suspension has a rule, so that none is silently taken to need nothing.
  for (std::size_t i = 0; i < words<Suspension>().size(); ++i) {
    CHECK(rules.way_of(static_cast<Suspension>(i), {}) != nullptr);
  }
}

}  // namespace substance_table_test
