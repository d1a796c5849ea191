// Lists, counts and price lists of the sample clinic, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace lists_test {

namespace {

const std::string supplier = "Pebble & Thistle Limb Supplies";

bool is_workbook(const std::string& file) {
  return read_file(file).starts_with("PK");
}

nlohmann::json lot_of(const SampleClinic& clinic, const std::string& item, const std::string& lot) {
  const auto recall = clinic.run({"recall", "--item", item, "--lot", lot}).json();
  for (const auto& stock : recall["stock"]) {
    if (stock["lot"] == lot) return stock;
  }
  return {};
}

}  // namespace

TEST_CASE("Stock list, forecast by month and recall list are written as workbooks") {
  const SampleClinic clinic;
  REQUIRE(clinic.imported.status == 0);
  const auto stock = (clinic.folder / "stock.xlsx").string();
  const auto told = clinic.run({"stock-list", "--out", stock});
  REQUIRE(told.status == 0);
  CHECK(told.json()["rows"].get<int>() > 20);
  CHECK(is_workbook(stock));

  const auto months = (clinic.folder / "months.xlsx").string();
  const auto ahead = clinic.run({"months", "--months", "2", "--out", months}).json();
  CHECK(is_workbook(months));
  CHECK(ahead["items"][0]["months"].size() == 3);
  CHECK(ahead["items"][0]["months"][0]["from"] == "2026-11-26");
  // The months up to the end of January are 67 days.
  const auto item = ahead["items"][0]["item_code"].get<std::string>();
  const auto demand = clinic.run({"demand", "--item", item, "--days", "67"}).json();
  double sum = 0;
  for (const auto& month : ahead["items"][0]["months"]) sum += month["expected"].get<double>();
  CHECK(sum == doctest::Approx(demand["mean"].get<double>()).epsilon(1e-6));

  const auto recall = (clinic.folder / "recall.xlsx").string();
  CHECK(clinic.run({"recall", "--item", "LS10-22", "--out", recall}).status == 1);
  CHECK(is_workbook(recall));
  CHECK(clinic.run({"stock-list", "--out", "/nonexistent/stock.xlsx"}).status == 2);
}

TEST_CASE("A count is planned, shown, booked, and then known") {
  const SampleClinic clinic;
  const auto plan = clinic.run({"count", "plan", "--place", "main store", "--most", "3"}).json();
  REQUIRE(plan["shelves"].size() == 3);
  CHECK(plan["shelves"][0]["rank"].get<double>() >= plan["shelves"][1]["rank"].get<double>());
  CHECK(clinic.run({"count", "plan", "--place", "moon"}).status == 2);

  const auto sheet = (clinic.folder / "count.xlsx").string();
  REQUIRE(
      clinic.run({"count", "sheet", "--place", "main store", "--out", sheet, "--blind"}).status ==
      0);
  const auto blank = clinic.run({"count", "enter", "--file", sheet, "--book"});
  CHECK(blank.status == 0);
  CHECK(blank.json()["counted"].empty());
  CHECK(blank.json()["blank"].get<int>() > 10);

  const auto before = lot_of(clinic, "LS10-22", "E2600968")["quantity"].get<int>();
  const std::vector<std::string> typed{
      "count",   "enter", "--place",  "main store", "--item",
      "LS10-22", "--lot", "E2600968", "--quantity", std::to_string(before + 1)};
  const auto shown = clinic.run(typed);
  CHECK(shown.status == 1);
  CHECK(shown.json()["counted"][0]["difference"] == 1);
  CHECK(shown.json()["counted"][0]["value"] == 412.0);
  CHECK(lot_of(clinic, "LS10-22", "E2600968")["quantity"] == before);
  auto book = typed;
  book.insert(book.end(), {"--book", "--counted-by", "Ina"});
  CHECK(clinic.run(book).status == 0);
  CHECK(lot_of(clinic, "LS10-22", "E2600968")["quantity"] == before + 1);
  const auto after = clinic.run({"count", "plan"}).json();
  CHECK(after["shelves"].back()["last_counted"] == today);
  CHECK(clinic.run({"verify"}).status == 0);
  CHECK(clinic.run({"count", "enter"}).status == 2);
  CHECK(clinic.run({"count"}).status == 2);
}

TEST_CASE("A price list is shown and accepted, and a file that is none is refused") {
  const SampleClinic clinic;
  const auto file = (clinic.folder / "list.csv").string();
  write_file(file, "Artikel;Preis\nP10200;430,00\nP10213;990,00\nQ1;1,00\n");
  const std::vector<std::string> words{"prices",         file,
                                       "--supplier",     supplier,
                                       "--separator",    ";",
                                       "--decimal-sign", ",",
                                       "--column",       "supplier_item=Artikel",
                                       "--column",       "price=Preis"};
  const auto shown = clinic.run(words);
  CAPTURE(shown.errors);
  REQUIRE(shown.status == 1);
  CHECK(shown.json()["changes"].size() == 2);
  CHECK(shown.json()["changes"][1]["doubts"][0] == "large_change");
  CHECK(shown.json()["not_in_catalogue"].size() == 1);
  auto accept = words;
  accept.push_back("--accept");
  const auto accepted = clinic.run(accept);
  CHECK(accepted.json()["written"] == 1);
  CHECK(accepted.json()["held_back"] == 1);
  accept.push_back("--accept-doubtful");
  CHECK(clinic.run(accept).json()["written"] == 1);
  CHECK(clinic.run(words).status == 0);
  CHECK(clinic.run({"prices", file, "--supplier", "Nobody"}).status == 2);
  write_file(file, "PK nothing");
  const auto damaged = clinic.run({"prices", file, "--supplier", supplier});
  CHECK(damaged.status == 2);
  CHECK(damaged.errors.find('\n') == damaged.errors.size() - 1);
}

}  // namespace lists_test
