// A clinic with two branches by command: demand of each, moves between them, and sending these.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "batch/run_batch.hpp"

namespace restock_test {

namespace {

/// Twenty patients of North whose liners are as old as those that wore out before, two of the main
/// store with new ones; all stock lies at the main store.
struct TwoBranches {
  TwoBranches() {
    write_file(folder / "files/suppliers.csv", "supplier,currency\nTern,EUR\n");
    write_file(folder / "files/catalogue.csv",
               "item_code,description,kind,material,supplier,unit_cost,currency\n"
               "L1,Liner,liner,silicone,Tern,120.50,EUR\n");
    std::string patients = "patient_ref,place\n";
    std::string issued = "patient_ref,side,item_code,lot,issued_on,ended_on,end_reason\n";
    for (int i = 1; i <= 22; ++i) {
      const bool north = i <= 20;
      patients += fmt::format("P{},{}\n", i, north ? "North" : "");
      issued += fmt::format("P{},left,L1,A,{},,\n", i, north ? "2026-03-05" : "2026-11-20");
      if (north) issued += fmt::format("P{},left,L1,A,2025-06-05,2026-03-05,hole\n", i);
    }
    write_file(folder / "files/patients.csv", patients);
    write_file(folder / "files/issued.csv", issued);
    write_file(folder / "files/stock.csv",
               "item_code,lot,use_by,quantity,place\n"
               "L1,B,2028-06-30,4,main store\nL1,C,2027-06-30,1,main store\n");
    REQUIRE(tell({"import", (folder / "files").string()}).status == 0);
  }
  [[nodiscard]] Ran tell(std::vector<std::string> words) const {
    words.insert(words.begin(), {"--db", (folder / "clinic.db").string(), "--today", "2026-11-25"});
    return run_batch(words);
  }
  [[nodiscard]] nlohmann::json done(std::vector<std::string> words) const {
    words.insert(words.begin(), "--json");
    const auto ran = tell(std::move(words));
    INFO(ran.errors);
    REQUIRE(ran.status == 0);
    return ran.json();
  }
  [[nodiscard]] double demand_at(const std::string& place) const {
    std::vector<std::string> words{"demand", "--item", "L1", "--days", "60"};
    if (!place.empty()) words.insert(words.end(), {"--place", place});
    return done(words)["mean"];
  }
  ScratchFolder folder;
};

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("Demand is asked for by place and adds up; the order says where it is expected") {
  const TwoBranches clinic;
  const double north = clinic.demand_at("North");
  const double main = clinic.demand_at("main store");
  CHECK(north > 10 * main);
  CHECK(north + main == doctest::Approx(clinic.demand_at("")).epsilon(1e-9));
  const auto refused = clinic.tell({"demand", "--item", "L1", "--days", "9", "--place", "Noth"});
  CHECK(refused.status == 2);
  CHECK(refused.errors == "The clinic has no store 'Noth'; it has main store and North.\n");
  const auto proposed = clinic.tell({"propose"});
  CHECK(holds(proposed.out, "at North"));
}

TEST_CASE("Moves are listed with their reason, sent in one booking, and then under way") {
  const TwoBranches clinic;
  const auto listed = clinic.done({"restock"});
  CHECK(listed["days"] == 7);
  CHECK(listed["sent"] == false);
  CHECK(listed["places"][1]["place"] == "North");
  CHECK(listed["places"][1]["transit_days"] == 1);
  REQUIRE(listed["moves"].size() == 1);
  const auto& move = listed["moves"][0];
  CHECK(move["from"]["place"] == "main store");
  CHECK(move["to"]["place"] == "North");
  CHECK(move["to"]["until"] == "2026-12-03");
  CHECK(move["lots"][0]["lot"] == "C");  // the lot that must be used first
  CHECK(move["to"]["chance_short_after"] < move["to"]["chance_short_before"]);
  CHECK(move["missing_after"] < move["missing_before"]);
  CHECK(holds(move["why"].get<std::string>(), "Expected to need it: P"));
  const int pieces = move["quantity"];

  const auto sent = clinic.tell({"restock", "--send"});
  CHECK(sent.status == 0);
  CHECK(holds(sent.out, "They are sent"));
  int under_way = 0;
  const auto transits = clinic.done({"stock", "transits"});
  for (const auto& row : transits["transits"]) {
    under_way += row["quantity"].get<int>();
  }
  CHECK(under_way == pieces);
  CHECK(clinic.done({"restock"})["moves"].empty());
  CHECK(holds(clinic.tell({"restock"}).out, "Nothing needs to be moved"));
  CHECK(clinic.done({"stock", "arrive", "--item", "L1", "--lot", "C", "--to", "North"})["movements"]
            .size() == 2);
  CHECK(clinic.done({"restock"})["places"][1]["transfers"] == 1);
  CHECK(clinic.tell({"verify"}).status == 0);
}

TEST_CASE("A patient changes branch by command; a clinic with one place has nothing to move") {
  const TwoBranches clinic;
  CHECK(
      clinic.tell({"patient-place", "--patient", "P1", "--place", "Noth"}).errors ==
      "'Noth' is not a store of the clinic (main store and North); correct the name, or record it "
      "as a place first.\n");
  CHECK(clinic.tell({"patient-place", "--patient", "P1", "--place", "main store"}).out ==
        "P1 belongs to main store.\n");
  const double before = clinic.demand_at("main store");
  for (int i = 2; i <= 20; ++i) {
    CHECK(clinic.done(
              {"patient-place", "--patient", fmt::format("P{}", i), "--place", ""})["place"] == "");
  }
  CHECK(clinic.demand_at("main store") > before);
  CHECK(clinic.done({"restock"})["moves"].empty());
  CHECK(holds(clinic.tell({"restock"}).out, "All stock is kept in one place."));
}

}  // namespace restock_test
