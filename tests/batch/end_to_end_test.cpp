// From the sample clinic's files to its orders, by the program that users run.
#include <cmath>

#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace end_to_end_test {

TEST_CASE("The sample clinic is taken without a refused row, and a second time changes nothing") {
  const SampleClinic clinic;
  CAPTURE(clinic.imported.errors);
  REQUIRE(clinic.imported.status == 0);
  CHECK(clinic.imported.json()["files"].size() == 14);
  const auto again = clinic.run({"import", sample});
  CHECK(again.status == 0);
  const auto report = again.json();
  for (const auto& file : report["files"]) {
    CAPTURE(file.dump());
    CHECK(file["added"] == 0);
    CHECK(file["changed"] == 0);
    CHECK(file["unchanged"] == file["rows"]);
  }
}

TEST_CASE("The forecast gives every unit in use an ordered span of dates") {
  const SampleClinic clinic;
  const auto ran = clinic.run({"forecast", "--by", "2027-02-01"});
  REQUIRE(ran.status == 0);
  const auto forecast = ran.json();
  CHECK(forecast["today"] == today);
  REQUIRE(forecast["units"].size() > 200);
  for (const auto& unit : forecast["units"]) {
    for (const char* key :
         {"patient_ref", "side", "item_code", "serial", "lot", "kind", "issued_on", "wear_age_days",
          "p05", "p95", "worn_by", "endings", "endings_by"}) {
      REQUIRE(unit.contains(key));
    }
    CHECK(unit["worn_by"].get<double>() >= 0);
    CHECK(unit["worn_by"].get<double>() <= 1);
    double at_last = 0;
    for (const auto& chance : unit["endings"]) at_last += chance.get<double>();
    CHECK(at_last == doctest::Approx(1));
    double by_then = 0;
    for (const auto& chance : unit["endings_by"]) by_then += chance.get<double>();
    CHECK(by_then == doctest::Approx(1));
    // What may also be lost or outgrown is less likely to be worn out.
    CHECK(unit["endings_by"]["worn"].get<double>() <= unit["worn_by"].get<double>() + 1e-5);
    CHECK(unit["endings"]["lost"].get<double>() > unit["endings_by"]["lost"].get<double>());
    std::string before = today;
    for (const char* key : {"p05", "p10", "p25", "p50", "p75", "p90", "p95"}) {
      if (unit[key].is_null()) break;  // lies in a drawer, or lasts longer than a hundred years
      CHECK(unit[key].get<std::string>() >= before);
      before = unit[key].get<std::string>();
    }
  }
}

TEST_CASE("A proposed quantity brings the position up to the target") {
  const SampleClinic clinic;
  const auto proposal = clinic.run({"propose"}).json();
  REQUIRE(proposal["lines"].size() > 3);
  for (const auto& line : proposal["lines"]) {
    CAPTURE(line.dump());
    const int position =
        line["on_hand"].get<int>() + line["on_order"].get<int>() - line["reserved"].get<int>();
    CHECK(position + line["quantity"].get<int>() >= line["target"].get<int>());
    CHECK(line["order_by"].get<std::string>() >= today);
    CHECK(line["chance_short"].get<double>() >= 0);
    CHECK(line["chance_short"].get<double>() <= 1);
    CHECK(line["why"].get<std::string>().size() > 20);
    for (const char* key : {"supplier", "item_code", "place", "unit_cost"}) {
      CHECK(line.contains(key));
    }
  }
}

TEST_CASE("The chances of all demands sum to one and give the mean") {
  const SampleClinic clinic;
  const auto item = clinic.run({"propose"}).json()["lines"][0]["item_code"].get<std::string>();
  const auto demand = clinic.run({"demand", "--item", item, "--days", "60"}).json();
  double mass = 0;
  double mean = 0;
  for (std::size_t n = 0; n < demand["pmf"].size(); ++n) {
    mass += demand["pmf"][n].get<double>();
    mean += static_cast<double>(n) * demand["pmf"][n].get<double>();
  }
  CHECK(mass == doctest::Approx(1).epsilon(1e-12));
  CHECK(mean == doctest::Approx(demand["mean"].get<double>()).epsilon(1e-9));
  CHECK(demand["days"] == 60);
  CHECK(demand["item_code"] == item);
}

TEST_CASE("Orders are written once a supplier, keep their number, and count when sent") {
  const SampleClinic clinic;
  const std::string out = (clinic.folder / "orders").string();
  const auto written = clinic.run({"orders", "--out", out});
  CAPTURE(written.errors);
  REQUIRE(written.status == 0);
  const auto orders = written.json()["orders"];
  REQUIRE(orders.size() >= 2);
  for (const auto& order : orders) {
    CHECK(read_file(order["file"].get<std::string>()).starts_with("PK"));
  }
  CHECK(clinic.run({"orders", "--out", out}).json()["orders"] == orders);
  REQUIRE(clinic.run({"orders", "--out", out, "--sent"}).status == 0);
  CHECK(clinic.run({"propose"}).json()["lines"].empty());
  const auto verified = clinic.run({"verify"});
  CHECK(verified.status == 0);
  CHECK(verified.json()["problems"].empty());
}

TEST_CASE("No patient name stands in anything that the forecast or the proposal prints") {
  const SampleClinic clinic;
  const std::string text = clinic.run({"forecast"}).out + clinic.run({"propose"}).out;
  std::stringstream rows{read_file(sample + "/patients.csv")};
  std::string row;
  std::getline(rows, row);
  REQUIRE(row.starts_with("patient_ref,given_name,family_name"));
  int names = 0;
  while (std::getline(rows, row)) {
    std::stringstream cells{row};
    std::string ref;
    std::string given;
    std::string family;
    std::getline(cells, ref, ',');
    std::getline(cells, given, ',');
    std::getline(cells, family, ',');
    CAPTURE(family);
    CHECK(text.find(family) == std::string::npos);
    ++names;
  }
  CHECK(names > 100);
}

}  // namespace end_to_end_test
