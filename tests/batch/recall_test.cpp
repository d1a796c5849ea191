// A recall in the sample clinic, beside a plain reading of its files.
#include <map>
#include <set>
#include <sstream>

#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace recall_test {

namespace {

nlohmann::json touched(const SampleClinic& clinic, const std::vector<std::string>& words) {
  const auto ran = clinic.run(words);
  REQUIRE(ran.status == 1);
  return ran.json();
}

/// The rows of a sample file whose cells hold no quoted commas, without the header.
std::vector<std::vector<std::string>> rows(const std::string& file) {
  std::stringstream lines{read_file(sample + "/" + file)};
  std::vector<std::vector<std::string>> made;
  std::string line;
  std::getline(lines, line);
  while (std::getline(lines, line)) {
    if (!line.empty() && line.back() == '\r') line.pop_back();
    std::stringstream cells{line + ","};
    auto& row = made.emplace_back();
    std::string cell;
    while (std::getline(cells, cell, ',')) row.push_back(cell);
  }
  return made;
}

/// The item and lot that most units were issued of.
std::pair<std::string, std::string> widest_lot() {
  std::map<std::pair<std::string, std::string>, int> counts;
  for (const auto& row : rows("issued.csv")) {
    if (!row[3].empty()) ++counts[{row[2], row[3]}];
  }
  auto widest = counts.begin();
  for (auto lot = counts.begin(); lot != counts.end(); ++lot) {
    if (lot->second > widest->second) widest = lot;
  }
  return widest->first;
}

}  // namespace

TEST_CASE("Every patient with a unit of the lot is found, those who have one first") {
  const SampleClinic clinic;
  REQUIRE(clinic.imported.status == 0);
  const auto [item, lot] = widest_lot();
  std::multiset<std::string> recalled;
  std::multiset<std::string> unrecorded;
  std::set<std::string> having;
  for (const auto& row : rows("issued.csv")) {
    if (row[2] != item || (row[3] != lot && !row[3].empty())) continue;
    (row[3].empty() ? unrecorded : recalled).insert(row[0]);
    if (row[6].empty()) having.insert(row[0]);
  }
  const auto found = touched(clinic, {"recall", "--item", item, "--lot", lot});
  CHECK(found["item_code"] == item);
  CHECK(found["lot"] == lot);
  CHECK(found["moved_to_quarantine"].empty());
  CHECK(found["caution"].get<std::string>().find("clinician") != std::string::npos);
  std::multiset<std::string> found_recalled;
  std::multiset<std::string> found_unrecorded;
  bool after_those_having = false;
  for (const auto& patient : found["patients"]) {
    const auto ref = patient["patient_ref"].get<std::string>();
    CHECK(patient["in_hands"] == having.contains(ref));
    CHECK_FALSE((after_those_having && patient["in_hands"].get<bool>()));
    after_those_having = !patient["in_hands"].get<bool>();
    CHECK_FALSE(patient.contains("family_name"));
    for (const auto& unit : patient["units"]) {
      for (const char* key : {"side", "lot", "serial", "issued_on", "ended_on", "end_reason"}) {
        CHECK(unit.contains(key));
      }
      (unit["lot_match"] == "recalled" ? found_recalled : found_unrecorded).insert(ref);
    }
  }
  CHECK(found_recalled == recalled);
  CHECK(found_unrecorded == unrecorded);
  CHECK(
      touched(clinic, {"recall", "--item", item, "--lot", lot, "--names"})["patients"][0].contains(
          "family_name"));
}

TEST_CASE("A lot on the shelf is moved to quarantine once, and orders of the item are named") {
  const SampleClinic clinic;
  const auto stock = rows("stock.csv").front();
  const auto& item = stock[0];
  const auto& lot = stock[1];
  const auto first = touched(
      clinic, {"recall", "--item", item, "--lot", lot, "--quarantine", "--reason", "notice 7"});
  REQUIRE(first["moved_to_quarantine"].size() == 1);
  CHECK(first["moved_to_quarantine"][0]["lot"] == lot);
  CHECK(std::to_string(first["moved_to_quarantine"][0]["quantity"].get<int>()) == stock[3]);
  const auto second = touched(clinic, {"recall", "--item", item, "--lot", lot, "--quarantine"});
  CHECK(second["moved_to_quarantine"].empty());
  CHECK(second["stock"][0]["place"] == "quarantine");
  CHECK(second["stock"][0]["quarantined"] == true);
  int open = 0;
  std::string ordered_item;
  for (const auto& row : rows("orders.csv")) {
    if (row[6].empty()) ordered_item = row[2];
  }
  REQUIRE_FALSE(ordered_item.empty());
  for (const auto& row : rows("orders.csv")) {
    if (row[2] == ordered_item && row[6].empty()) ++open;
  }
  const auto orders =
      touched(clinic, {"recall", "--item", ordered_item, "--lot", "none"})["orders"];
  CHECK(orders.size() >= static_cast<std::size_t>(open));
  for (const auto& order : orders) CHECK(order["outstanding"].get<int>() > 0);
  CHECK(clinic.tell({"verify"}).status == 0);
}

TEST_CASE("A recall that touches nothing ends with status 0, an unknown item with 2") {
  const ScratchFolder folder;
  const std::string db = (folder / "clinic.db").string();
  write_file(folder / "files/catalogue.csv",
             "item_code,description,kind,material,supplier\nL1,Liner,liner,silicone,Moonmeadow\n");
  REQUIRE(run_batch({"--db", db, "import", (folder / "files").string()}).status == 0);
  const auto nothing = run_batch({"--db", db, "recall", "--item", "L1", "--lot", "A"});
  CHECK(nothing.status == 0);
  CHECK(nothing.out.find("proves nothing") != std::string::npos);
  const auto unknown = run_batch({"--db", db, "recall", "--item", "L2", "--lot", "A"});
  CHECK(unknown.status == 2);
  CHECK(unknown.errors.find("L2") != std::string::npos);
  CHECK(run_batch({"--db", db, "recall", "--lot", "A"}).status == 2);
}

}  // namespace recall_test
