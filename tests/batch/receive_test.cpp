// Deliveries to the sample clinic, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace receive_test {

namespace {

nlohmann::json to_come(const SampleClinic& clinic) {
  return clinic.run({"receive", "--list"}).json()["lines"];
}

/// A line whose item has one open line only and a GTIN.
nlohmann::json lone_line(const nlohmann::json& lines) {
  for (const auto& line : lines) {
    int alike = 0;
    for (const auto& other : lines) alike += other["item_code"] == line["item_code"] ? 1 : 0;
    if (alike == 1 && line["outstanding"].get<int>() >= 2) return line;
  }
  return {};
}

std::string gtin_of(const std::string& item) {
  const auto catalogue = read_file(sample + "/catalogue.csv");
  const auto row = catalogue.find("\n" + item + ",");
  const auto end = catalogue.find('\n', row + 1);
  const auto line = catalogue.substr(row, end - row);
  // gtin,stocked,warranty_days stand at the end.
  const auto stocked = line.rfind(',', line.rfind(',') - 1);
  const auto gtin = line.rfind(',', stocked - 1);
  return line.substr(gtin + 1, stocked - gtin - 1);
}

int on_shelf(const SampleClinic& clinic, const std::string& item, const std::string& lot) {
  int pieces = 0;
  // A value of its own: the loop must not run over a part of one that is gone.
  const auto recall = clinic.run({"recall", "--item", item, "--lot", lot}).json();
  for (const auto& stock : recall["stock"]) {
    if (stock["lot_match"] == "recalled") pieces += stock["quantity"].get<int>();
  }
  return pieces;
}

}  // namespace

TEST_CASE("What is still to come is listed, the longest overdue first") {
  const SampleClinic clinic;
  REQUIRE(clinic.imported.status == 0);
  const auto lines = to_come(clinic);
  REQUIRE(lines.size() > 2);
  std::string before;
  for (const auto& line : lines) {
    for (const char* key : {"supplier", "order_ref", "item_code", "ordered_on", "quantity",
                            "received_quantity", "lead_days", "lead_days_assumed"}) {
      CHECK(line.contains(key));
    }
    CHECK(line["outstanding"].get<int>() > 0);
    CHECK(line["expected_on"].get<std::string>() >= before);
    CHECK((line["overdue_days"].get<int>() > 0) == (line["expected_on"] < today));
    before = line["expected_on"].get<std::string>();
  }
  const auto supplier = lines[0]["supplier"].get<std::string>();
  const auto of_supplier = clinic.run({"receive", "--list", "--supplier", supplier}).json();
  for (const auto& line : of_supplier["lines"]) CHECK(line["supplier"] == supplier);
  CHECK(clinic.run({"receive", "--list", "--supplier", "Nobody"}).status == 2);
}

TEST_CASE("A scanned delivery is received in parts, and too much is not taken") {
  const SampleClinic clinic;
  const auto line = lone_line(to_come(clinic));
  REQUIRE_FALSE(line.is_null());
  const auto item = line["item_code"].get<std::string>();
  const auto order = line["order_ref"].get<std::string>();
  const int outstanding = line["outstanding"].get<int>();
  const auto scan = "]d201" + gtin_of(item) + "17290131" + "10NEW-1\x1D" + "301";
  const auto first = clinic.run({"receive", "--order", order, "--scan", scan});
  CAPTURE(first.errors);
  REQUIRE(first.status == 0);
  const auto told = first.json();
  CHECK(told["recorded"] == true);
  CHECK(told["item_code"] == item);
  CHECK(told["lot"] == "NEW-1");
  CHECK(told["use_by"] == "2029-01-31");
  CHECK(told["quantity"] == 1);
  CHECK(told["findings"].empty());
  CHECK(told["lines"][0]["outstanding"] == outstanding - 1);
  CHECK(on_shelf(clinic, item, "NEW-1") == 1);

  const std::vector<std::string> too_many{"receive", "--scan", scan, "--quantity",
                                          std::to_string(outstanding)};
  const auto refused = clinic.run(too_many);
  CHECK(refused.status == 1);
  CHECK(refused.json()["recorded"] == false);
  CHECK(refused.json()["findings"][0]["kind"] == "over_delivered");
  CHECK(on_shelf(clinic, item, "NEW-1") == 1);

  auto accepted = too_many;
  accepted.push_back("--accept-extra");
  const auto taken = clinic.run(accepted);
  CHECK(taken.status == 1);
  CHECK(taken.json()["recorded"] == true);
  CHECK(on_shelf(clinic, item, "NEW-1") == outstanding + 1);
  for (const auto& other : to_come(clinic)) CHECK(other["item_code"] != item);
  CHECK(clinic.run({"verify"}).status == 0);
}

TEST_CASE("Drafts are refused until they are sent") {
  const SampleClinic clinic;
  const auto out = (clinic.folder / "orders").string();
  const auto order = clinic.run({"orders", "--out", out}).json()["orders"][0];
  const auto number = order["number"].get<std::string>();
  const auto lines = clinic.run({"propose"}).json()["lines"];
  std::string item;
  for (const auto& line : lines) {
    if (line["supplier"] == order["supplier"]) item = line["item_code"].get<std::string>();
  }
  const std::vector<std::string> words{"receive", "--order",    number,      "--item",
                                       item,      "--quantity", "1",         "--lot",
                                       "NEW-1",   "--use-by",   "2029-01-31"};
  const auto draft = clinic.run(words);
  CHECK(draft.status == 2);
  CHECK(draft.errors.find("draft") != std::string::npos);
  REQUIRE(clinic.run({"orders", "--out", out, "--sent"}).status == 0);
  CHECK(clinic.run(words).status == 0);
}

TEST_CASE("Wrong items, missing dates and unreadable labels end with their own status") {
  const SampleClinic clinic;
  const auto lines = to_come(clinic);
  const auto line = lone_line(lines);
  const auto order = line["order_ref"].get<std::string>();
  const auto item = line["item_code"].get<std::string>();
  std::string other;
  for (const auto& open : lines) {
    if (open["order_ref"] != order) other = open["item_code"].get<std::string>();
  }
  const auto wrong = clinic.run({"receive", "--order", order, "--item", other, "--quantity", "1"});
  CHECK(wrong.status == 1);
  CHECK(wrong.json()["findings"][0]["kind"] == "wrong_item");
  const auto undated = clinic.run({"receive", "--order", order, "--item", item, "--quantity", "1"});
  CHECK(undated.status == 1);
  CHECK(undated.json()["findings"][0]["kind"] == "no_use_by");
  const auto label = clinic.run({"receive", "--order", order, "--scan", "(01)02900000010001"});
  CHECK(label.status == 2);
  CHECK(label.errors.find("check digit 1, but 0 was expected") != std::string::npos);
  CHECK(clinic.run({"receive", "--order", order, "--item", item, "--quantity", "0"}).status == 2);
  CHECK(clinic.run({"receive"}).status == 2);
}

}  // namespace receive_test
