// The life of an order of the sample clinic, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace order_test {

namespace {

/// The clinic with its drafts written, and the number of the first.
struct Drafts : SampleClinic {
  std::string out = (folder / "orders").string();
  nlohmann::json written = run({"orders", "--out", out}).json()["orders"];
  std::string number = written[0]["number"].get<std::string>();

  [[nodiscard]] nlohmann::json show() const { return run({"order", "show", number}).json(); }
};

}  // namespace

TEST_CASE("Orders are listed open first, and shown with lines and patients") {
  const Drafts clinic;
  const auto orders = clinic.run({"order", "list"}).json()["orders"];
  const auto open = clinic.run({"order", "list", "--open"}).json()["orders"];
  CHECK(orders.size() > open.size());
  REQUIRE(open.size() >= clinic.written.size());
  for (std::size_t i = 0; i < open.size(); ++i) CHECK(orders[i] == open[i]);
  for (const auto& order : open) {
    CHECK(order["state"] != "received");
    CHECK(order["state"] != "cancelled");
  }
  const auto shown = clinic.show();
  CHECK(shown["state"] == "draft");
  CHECK(shown["lines"].size() == clinic.written[0]["lines"].get<std::size_t>());
  CHECK(shown["revisions"].empty());
  CHECK(clinic.run({"order", "show", "no such order"}).status == 2);
  CHECK(clinic.run({"order", "list", "--supplier", "Nobody"}).status == 2);
  CHECK(clinic.tell({"order", "list"}).out.find(clinic.number) != std::string::npos);
}

TEST_CASE("A draft is approved, placed, amended, put on back-order, reprinted and cancelled") {
  const Drafts clinic;
  const auto& number = clinic.number;
  CHECK(clinic.run({"clinic", "--approval-above", "nothing"}).status == 2);
  CHECK(clinic.run({"clinic", "--approval-above", "1.00"}).json()["approval_above"] == 1.0);
  CHECK(clinic.show()["state"] == "waiting_for_approval");
  const auto refused = clinic.run({"order", "place", number});
  CHECK(refused.status == 2);
  CHECK(refused.errors.find("approve") != std::string::npos);
  const auto sent = clinic.run({"orders", "--out", clinic.out, "--sent"});
  CHECK(sent.status == 1);
  CHECK(sent.json()["orders"][0]["file"].is_null());
  CHECK(clinic.run({"order", "approve", number, "--by", "A person"}).status == 0);
  CHECK(clinic.run({"order", "place", number}).status == 0);
  const auto placed = clinic.show();
  CHECK(placed["state"] == "placed");
  CHECK(placed["approved_by"] == "A person");

  const auto item = placed["lines"][0]["item_code"].get<std::string>();
  const int more = placed["lines"][0]["quantity"].get<int>() + 1;
  const std::vector<std::string> amend{
      "order", "amend",   number, "--item", item, "--quantity", std::to_string(more),
      "--why", "one more"};
  CHECK(clinic.run(amend).status == 2);
  auto approved = amend;
  approved.insert(approved.end(), {"--approved-by", "A person"});
  CHECK(clinic.run(approved).json()["revision"] == 2);
  CHECK(clinic.run({"order", "back-order", number, "--item", item, "--until", "2027-02-01"})
            .json()["revision"] == 3);
  const auto shown = clinic.show();
  CHECK(shown["lines"][0]["promised_on"] == "2027-02-01");
  CHECK(shown["lines"][0]["on_back_order"] == true);
  CHECK(shown["revisions"].size() == 3);
  CHECK(shown["revisions"][1]["why"] == "one more");
  const auto first = clinic.run({"order", "show", number, "--revision", "1"}).json();
  CHECK(first["lines"][0]["quantity"] == more - 1);
  CHECK(clinic.run({"order", "show", number, "--revision", "9"}).status == 2);

  const auto again =
      clinic.run({"order", "reprint", number, "--revision", "2", "--out", clinic.out}).json();
  CHECK(again["revision"] == 2);
  CHECK(std::filesystem::exists(again["file"].get<std::string>()));
  CHECK(clinic.run({"order", "cancel", number}).status == 2);
  CHECK(clinic.run({"order", "cancel", number, "--why", "not needed"}).status == 0);
  CHECK(clinic.show()["state"] == "cancelled");
  CHECK(clinic.show()["cancelled_why"] == "not needed");
  CHECK(clinic.run({"verify"}).status == 0);
}

}  // namespace order_test
