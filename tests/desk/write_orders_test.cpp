#include "desk/write_orders.hpp"

#include <fstream>
#include <stdexcept>

#include <doctest/doctest.h>

#include "store/open.hpp"

namespace write_orders_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const Date today = make_date(2026, 11, 25);
const store::Author author{"tester", "test"};

supply::ProposalLine line(const std::string& supplier, const std::string& item, int quantity) {
  supply::ProposalLine made;
  made.supplier = {supplier};
  made.item = {item};
  made.quantity = quantity;
  made.unit_cost = Money{1000, Currency{"EUR"}};
  made.reason.lead_days = 7;
  return made;
}

/// A database with two suppliers and three items, and a proposal for both.
struct Given {
  std::unique_ptr<store::Store> store =
      store::open_in_memory([] { return std::chrono::system_clock::time_point{today}; });
  std::filesystem::path folder = std::filesystem::temp_directory_path() / "sparewell-orders-test";
  Assessment assessment;

  Given() {
    std::filesystem::remove_all(folder);
    const auto work = store->begin_write(author);
    for (const char* name : {"Alpha Example", "Beta Example"}) {
      Supplier supplier;
      supplier.name = {name};
      work->put(supplier);
    }
    for (const char* code : {"A1", "A2", "B1"}) {
      Item item;
      item.code = {code};
      item.description = "Example part";
      item.supplier = {code[0] == 'A' ? "Alpha Example" : "Beta Example"};
      work->put(item);
    }
    assessment.today = today;
    assessment.clinic = store::load_clinic(*work);
    work->commit();
    assessment.proposal = {line("Alpha Example", "A1", 2), line("Alpha Example", "A2", 3),
                           line("Beta Example", "B1", 4)};
  }

  std::vector<WrittenOrder> write() { return write_orders(*store, assessment, folder, author); }
  [[nodiscard]] Clinic stored() const { return store::load_clinic(*store->read()); }
};

int pieces_on_order(const Clinic& clinic) {
  int pieces = 0;
  for (const auto& order : clinic.order_lines) pieces += order.outstanding();
  return pieces;
}

}  // namespace

TEST_CASE("Each supplier gets a numbered order, a workbook and drafts that are not on order") {
  Given given;
  const auto written = given.write();
  REQUIRE(written.size() == 2);
  CHECK(written[0].supplier.text == "Alpha Example");
  CHECK(written[0].lines == 2);
  CHECK(written[0].pieces == 5);
  CHECK(written[0].number != written[1].number);
  for (const auto& order : written) CHECK(std::filesystem::file_size(order.file) > 1000);
  const Clinic stored = given.stored();
  REQUIRE(stored.order_lines.size() == 3);
  for (const auto& order : stored.order_lines) CHECK(order.state == OrderState::draft);
  CHECK(pieces_on_order(stored) == 0);
}

TEST_CASE("The same draft keeps its number and takes the new date") {
  Given given;
  const auto first = given.write();
  given.assessment.today = today + days{1};
  const auto second = given.write();
  CHECK(second[0].number == first[0].number);
  CHECK(second[1].number == first[1].number);
  const Clinic stored = given.stored();
  REQUIRE(stored.order_lines.size() == 3);
  CHECK(stored.order_lines[0].ordered_on == today + days{1});
}

TEST_CASE(
    "A changed draft takes a new number, the earlier is cancelled and its number not reused") {
  Given given;
  const auto first = given.write();
  given.assessment.proposal[0].quantity = 9;
  const auto second = given.write();
  CHECK(second[0].number != first[0].number);
  CHECK(second[0].number != first[1].number);
  CHECK(second[1].number == first[1].number);
  for (const auto& order : given.stored().order_lines) {
    if (order.order_ref == first[0].number) CHECK(order.state == OrderState::cancelled);
  }
  given.assessment.proposal[0].quantity = 2;
  const auto third = given.write();
  CHECK(third[0].number != first[0].number);
  CHECK(third[0].number != second[0].number);
}

TEST_CASE("What is marked as sent counts as on order and is no longer a draft") {
  Given given;
  const auto written = given.write();
  const auto send = [&](const std::string& number) {
    return mark_as_sent(*given.store, {number}, today, author).placed;
  };
  CHECK(send(written[0].number) == std::vector{written[0].number});
  CHECK(pieces_on_order(given.stored()) == 5);
  CHECK(send(written[0].number).empty());
  CHECK(send("no such order").empty());
  // An order that was sent is not touched by the next draft for the same supplier.
  const auto again = given.write();
  CHECK(again[0].number != written[0].number);
  CHECK(pieces_on_order(given.stored()) == 5);
}

TEST_CASE("Items without a known supplier are listed apart, without number or draft") {
  Given given;
  given.assessment.proposal.insert(given.assessment.proposal.begin(), line("", "A1", 1));
  const auto written = given.write();
  REQUIRE(written.size() == 3);
  CHECK(written[2].number.empty());
  CHECK(written[2].supplier.empty());
  CHECK(std::filesystem::exists(written[2].file));
  CHECK(given.stored().order_lines.size() == 3);
}

TEST_CASE("When a workbook cannot be written its draft is kept and the others are written") {
  Given given;
  const auto first = given.write();
  std::filesystem::remove(first[0].file);
  std::filesystem::create_directory(first[0].file);  // in the way of the file
  std::ofstream{first[0].file / "something"} << "here";
  std::filesystem::remove(first[1].file);
  std::string sentence;
  try {
    (void)given.write();
  } catch (const std::runtime_error& failure) {
    sentence = failure.what();
  }
  CHECK(sentence.find(first[0].number + " is kept as a draft") != std::string::npos);
  CHECK(std::filesystem::exists(first[1].file));
  CHECK(given.stored().order_lines.size() == 3);
}

TEST_CASE("A folder that cannot be made stops before anything is stored") {
  Given given;
  std::ofstream{given.folder} << "a file, not a folder";
  CHECK_THROWS_AS((void)given.write(), std::runtime_error);
  CHECK(given.stored().order_lines.empty());
  std::filesystem::remove(given.folder);
}

TEST_CASE("Nothing proposed writes nothing") {
  Given given;
  given.assessment.proposal.clear();
  CHECK(given.write().empty());
}

}  // namespace write_orders_test
