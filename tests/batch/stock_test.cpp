// Stock work by command: what is booked, what is refused, and what is listed afterwards.
#include <doctest/doctest.h>

#include "batch/run_batch.hpp"

namespace stock_test {

namespace {

struct SmallClinic {
  SmallClinic() {
    write_file(folder / "files/suppliers.csv", "supplier,currency\nTern,EUR\n");
    write_file(folder / "files/catalogue.csv",
               "item_code,description,kind,material,supplier,unit_cost,currency\n"
               "L1,Liner,liner,silicone,Tern,120.50,EUR\n");
    write_file(folder / "files/patients.csv", "patient_ref\nP1\n");
    write_file(folder / "files/stock.csv",
               "item_code,lot,use_by,quantity,place\n"
               "L1,A,2027-06-30,6,main store\nL1,B,2026-11-24,2,main store\n");
    REQUIRE(tell({"import", (folder / "files").string()}).status == 0);
  }
  [[nodiscard]] Ran tell(std::vector<std::string> words) const {
    words.insert(words.begin(), {"--db", (folder / "clinic.db").string(), "--today", "2026-11-25"});
    return run_batch(words);
  }
  /// Done, with its JSON.
  nlohmann::json done(std::vector<std::string> words) const {
    words.insert(words.begin(), "--json");
    const auto ran = tell(std::move(words));
    INFO(ran.errors);
    REQUIRE(ran.status == 0);
    return ran.json();
  }
  [[nodiscard]] std::string refusal(const std::vector<std::string>& words) const {
    const auto ran = tell(words);
    CHECK(ran.status == 2);
    CHECK(ran.errors.ends_with(".\n"));
    return ran.errors;
  }
  [[nodiscard]] int at(const std::string& place) const {
    int pieces = 0;
    const auto listed = done({"stock", "list", "--place", place});
    for (const auto& row : listed["stock"]) {
      pieces += row["quantity"].get<int>();
    }
    return pieces;
  }

  ScratchFolder folder;
};

std::vector<std::string> pieces(std::vector<std::string> words, const std::string& quantity,
                                const std::vector<std::string>& more) {
  words.insert(words.end(), {"--item", "L1", "--lot", "A", "--quantity", quantity});
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("A transfer lies in transit until it has arrived, and a difference needs a reason") {
  const SmallClinic clinic;
  CHECK(clinic.done(pieces({"stock", "transfer"}, "4", {"--to", "branch"}))["movements"].size() ==
        2);
  CHECK(clinic.at("main store") == 4);
  CHECK(clinic.done({"stock", "transits"})["transits"][0]["quantity"] == 4);
  CHECK(holds(clinic.refusal({"stock", "arrive", "--item", "L1", "--to", "branch", "--quantity",
                              "3", "--rest-lost"}),
              "give a reason for the difference"));
  const auto arrived = clinic.done({"stock", "arrive", "--item", "L1", "--to", "branch",
                                    "--quantity", "3", "--rest-lost", "--reason", "box was open"});
  CHECK(arrived["notes"][0] == "1 did not arrive and is written off.");
  CHECK(clinic.at("branch") == 3);
  CHECK(clinic.done({"stock", "transits"})["transits"].empty());
  CHECK(holds(clinic.refusal(pieces({"stock", "transfer"}, "5", {"--to", "branch"})),
              "Only 2 of L1, lot A lie at main store"));
  CHECK(clinic.tell({"verify"}).status == 0);
}

TEST_CASE("Stock is held back, released and written off with its reason; expired stock is listed") {
  const SmallClinic clinic;
  clinic.done(pieces({"stock", "quarantine"}, "2", {"--reason", "smells"}));
  CHECK(clinic.at("quarantine") == 2);
  clinic.done(pieces({"stock", "release"}, "1", {"--reason", "checked"}));
  CHECK(clinic.at("quarantine") == 1);
  CHECK(holds(clinic.refusal(pieces({"stock", "write-off"}, "1", {"--why", "expired"})),
              "not expired"));
  const auto expired = clinic.done({"stock", "list", "--expiring", "0"})["stock"];
  REQUIRE(expired.size() == 1);
  CHECK(expired[0]["lot"] == "B");
  clinic.done(
      {"stock", "write-off", "--item", "L1", "--lot", "B", "--quantity", "2", "--why", "expired"});
  CHECK(clinic.done({"stock", "list", "--expiring", "0"})["stock"].empty());
}

TEST_CASE("A return is owed a credit until it is settled") {
  const SmallClinic clinic;
  const auto sent = clinic.done(
      pieces({"stock", "return"}, "2", {"--reference", "RMA-7", "--reason", "seam opens"}));
  CHECK(sent["number"] == 1);
  auto owed = clinic.done({"stock", "credits"});
  CHECK(owed["credits"][0]["outstanding"] == 241.0);
  CHECK(owed["sums"]["EUR"] == 241.0);
  clinic.done({"stock", "credit", "--return", "1", "--amount", "41"});
  CHECK(holds(clinic.refusal({"stock", "credit", "--return", "1", "--amount", "201"}),
              "Only 200.00 EUR is still due"));
  clinic.done({"stock", "credit", "--return", "1", "--amount", "200"});
  CHECK(clinic.done({"stock", "credits"})["credits"].empty());
  CHECK(clinic.at("at supplier Tern") == 0);
}

TEST_CASE("A loan is listed, becomes overdue, and a part that is kept is issued") {
  const SmallClinic clinic;
  const auto lent = clinic.done(pieces(
      {"stock", "lend"}, "2", {"--patient", "P1", "--side", "left", "--until", "2026-12-01"}));
  CHECK(lent["number"] == 1);
  CHECK(clinic.done({"stock", "loans", "--overdue"})["loans"].empty());
  const auto late = run_batch({"--db", (clinic.folder / "clinic.db").string(), "--today",
                               "2026-12-02", "--json", "stock", "loans", "--overdue"});
  CHECK(late.json()["loans"][0]["outstanding"] == 2);
  const auto recall = clinic.tell({"--json", "recall", "--item", "L1", "--lot", "A"});
  CHECK(recall.json()["loans"][0]["patient_ref"] == "P1");
  clinic.done(
      {"stock", "loan-back", "--loan", "1", "--kept", "1", "--serial", "S1", "--back", "1"});
  CHECK(clinic.done({"stock", "loans"})["loans"].empty());
  const auto issued = clinic.tell({"--json", "recall", "--item", "L1", "--lot", "A"}).json();
  CHECK(issued["patients"][0]["units"][0]["serial"] == "S1");
  CHECK(clinic.at("main store") == 7);
}

TEST_CASE("A booking is taken back once, and a place that holds stock back stays one") {
  const SmallClinic clinic;
  clinic.done(pieces({"stock", "transfer"}, "3", {"--to", "branch", "--at-once"}));
  const auto bookings = clinic.done({"stock", "history", "--item", "L1"})["bookings"];
  const auto booking = std::to_string(bookings[0]["booking"].get<int>());
  clinic.done({"stock", "reverse", "--booking", booking, "--reason", "wrong branch"});
  CHECK(clinic.at("main store") == 8);
  CHECK(holds(clinic.refusal({"stock", "reverse", "--booking", booking, "--reason", "again"}),
              "taken back already"));
  clinic.done({"place", "add", "cage", "--sort", "quarantine"});
  clinic.done(pieces({"stock", "quarantine"}, "1", {"--to", "cage", "--reason", "smells"}));
  CHECK(holds(clinic.refusal({"place", "add", "cage"}), "release it before"));
  CHECK(holds(clinic.refusal({"place", "add", "on loan"}), "keeps the place"));
  CHECK(clinic.done({"place", "list"})["places"].size() == 2);
}

}  // namespace stock_test
