// How long it takes to examine everyone after a substance has changed, beside SQLite's recursive
// query over the same records in memory.
#include <chrono>
#include <cmath>
#include <set>

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include "bench/best_seconds.hpp"
#include "care/examination.hpp"
#include "desk/patient_findings.hpp"
#include "desk/substance_table.hpp"
#include "store/open.hpp"

namespace {

using namespace sparewell;

/// Steps that are certain, both ways for other names: by asking the table for every pair of names.
void fill_graph(SQLite::Database& database, const Clinic& clinic,
                const care::Substances& substances) {
  std::set<std::string> held;
  for (const auto& item : clinic.items) held.insert(item.constituents.begin(), item.constituents.end());
  std::set<std::string> recorded;
  for (const auto& each : clinic.sensitivities) recorded.insert(each.substance);
  SQLite::Statement insert{database, "INSERT INTO step VALUES (?, ?)"};
  for (const auto& from : held) {
    for (const auto& to : recorded) {
      for (const auto& path : substances.path(from, to)) {
        if (!path.certain()) continue;
        for (std::size_t i = 0; i + 1 < path.names.size(); ++i) {
          insert.bind(1, path.names[i]);
          insert.bind(2, path.names[i + 1]);
          insert.exec();
          insert.reset();
        }
      }
    }
  }
}

void fill(SQLite::Database& database, const Clinic& clinic, const care::Substances& substances,
          Date today) {
  database.exec(
      "CREATE TABLE step (a TEXT, b TEXT); CREATE TABLE holds (item TEXT, substance TEXT);"
      "CREATE TABLE sensitive (patient TEXT, substance TEXT);"
      "CREATE TABLE worn (patient TEXT, side INTEGER, item TEXT)");
  SQLite::Transaction whole{database};
  fill_graph(database, clinic, substances);
  const auto add = [&](const char* sql, const auto&... values) {
    SQLite::Statement insert{database, sql};
    int column = 0;
    (insert.bind(++column, values), ...);
    insert.exec();
  };
  for (const auto& item : clinic.items) {
    for (const auto& each : item.constituents) {
      add("INSERT INTO holds VALUES (?, ?)", item.code.text, each);
    }
  }
  for (const auto& each : clinic.sensitivities) {
    add("INSERT INTO sensitive VALUES (?, ?)", each.patient.text, each.substance);
  }
  for (const auto& unit : clinic.units) {
    if (!unit.in_use_on(today)) continue;
    add("INSERT INTO worn VALUES (?, ?, ?)", unit.patient.text, static_cast<int>(unit.side),
        unit.item.text);
  }
  database.exec(
      "CREATE INDEX worn_by ON worn (patient); CREATE INDEX holds_by ON holds (item);"
      "CREATE INDEX step_by ON step (a)");
  whole.commit();
}

int conflicts_by_query(SQLite::Database& database) {
  SQLite::Statement query{
      database,
      "WITH RECURSIVE way(a, b) AS (SELECT substance, substance FROM holds UNION "
      "SELECT way.a, step.b FROM way JOIN step ON step.a = way.b) "
      "SELECT count(*) FROM (SELECT DISTINCT w.patient, w.side, w.item, s.substance FROM sensitive s "
      "JOIN worn w ON w.patient = s.patient JOIN holds h ON h.item = w.item "
      "JOIN way ON way.a = h.substance AND way.b = s.substance)"};
  query.executeStep();
  return query.getColumn(0).getInt();
}

int conflicts_by_us(const Clinic& clinic, Date today) {
  const auto table = desk::substances_of(clinic, today);
  std::set<std::tuple<PatientRef, std::optional<Side>, ItemCode, std::string>> found;
  for (const auto& each : care::examine(clinic, *table, today)) {
    if (each.holding != care::Holding::worn || each.verdict.verdict != Verdict::conflict) continue;
    found.emplace(each.patient, each.side, each.item, each.verdict.recorded.substance);
  }
  return static_cast<int>(found.size());
}

}  // namespace

/// usage: examination_bench CLINIC-FILE, such as one with the sample maker's 10,000 patients
int main(int count, char** arguments) {
  if (count != 2) return 2;
  const Date today = make_date(2026, 11, 25);
  const auto store = store::open_clinic_file(arguments[1], store::OpenMode::existing,
                                             [] { return std::chrono::system_clock::now(); });
  auto clinic = as_of(store::load_clinic(*store->read()), today);
  // A change that makes the table anew: silicone is found to hold mineral oil.
  clinic.substances = {
      {"silicone elastomer", SubstanceRelation::is_a, "mineral oil", "bench", std::nullopt}};
  SQLite::Database database{":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
  fill(database, clinic, desk::substances_of(clinic, today)->substances, today);
  int by_query = 0;
  int by_us = 0;
  const double query = bench::best_seconds(3, [&] { by_query = conflicts_by_query(database); });
  const double ours = bench::best_seconds(3, [&] { by_us = conflicts_by_us(clinic, today); });
  const double all =
      bench::best_seconds(3, [&] { (void)desk::findings_of_everyone(clinic, today).size(); });
  fmt::print("{} patients, {} units, {} sensitivities\n", clinic.patients.size(),
             clinic.units.size(), clinic.sensitivities.size());
  fmt::print("conflicts: {} by ours, {} by the query\n", by_us, by_query);
  fmt::print("everyone examined: {:.3f} s; recursive query over prepared tables: {:.3f} s; ratio "
             "{:.2f}\n",
             ours, query, ours / query);
  fmt::print("every check of everyone's parts: {:.3f} s\n", all);
  const auto& patient = clinic.patients.at(clinic.patients.size() / 2).ref;
  const double one =
      bench::best_seconds(3, [&] { (void)desk::findings_of(clinic, patient, today).size(); });
  fmt::print("every check of one patient's parts, with what is foreseen of the limb: {:.4f} s\n",
             one);
  return by_us == by_query ? 0 : 1;
}
