#include <filesystem>
#include <fstream>
#include <set>

#include <doctest/doctest.h>

#include "desk/clinic_form.hpp"
#include "desk/commands.hpp"
#include "desk/describe_failure.hpp"
#include "desk/draft_orders.hpp"
#include "desk/remembered.hpp"
#include "desk/wording.hpp"
#include "store/port.hpp"

namespace window_words_test {

using namespace sparewell;
using namespace sparewell::desk;

TEST_CASE("Amounts have separators and their currency, and chances are never certain") {
  CHECK(amount_words({123456789, {"EUR"}}) == "1,234,567.89 EUR");
  CHECK(amount_words({-123456, {"JPY"}}) == "-123,456 JPY");
  CHECK(amount_words({999, {"EUR"}}) == "9.99 EUR");
  CHECK(chance_words(0) == "under 1 %");
  CHECK(chance_words(1) == "over 99 %");
  CHECK(chance_words(0.125) == "13 %");
  CHECK(list_words({"a", "b", "c"}) == "a, b and c");
  CHECK(day_words(make_date(2026, 11, 25)) == "Wed 25 Nov 2026");
}

TEST_CASE("A typed list is read part by part, without spaces around them and without empty parts") {
  CHECK(parts_of_list(" a; b c ;;d;", ";") == std::vector<std::string>{"a", "b c", "d"});
  CHECK(parts_of_list("a,b;c", ",;").size() == 3);
  CHECK(parts_of_list("  ", ";").empty());
}

TEST_CASE("No two commands share a key, or a mnemonic within their menu") {
  std::set<std::string> keys;
  std::set<std::pair<Menu, char>> mnemonics;
  for (const auto& spec : command_table()) {
    CAPTURE(spec.label);
    if (!spec.key.empty()) CHECK(keys.insert(std::string{spec.key}).second);
    const auto at = spec.label.find('&');
    REQUIRE(at != std::string_view::npos);
    const auto letter = static_cast<char>(spec.label[at + 1] | 0x20);
    CHECK(mnemonics.insert({spec.menu, letter}).second);
    CHECK_FALSE(spec.help.empty());
  }
}

TEST_CASE("Commands that change the clinic file are off without one, and while work is going on") {
  const CommandState none;
  CommandState open{true, false, true, true};
  for (const auto command : {Command::import_folder, Command::clinic_details, Command::write_orders,
                             Command::mark_as_sent, Command::test_forecasts, Command::refresh}) {
    CHECK_FALSE(command_spec(command).enabled(none));
    CHECK(command_spec(command).enabled(open));
  }
  CHECK_FALSE(command_spec(Command::stock_move).enabled(open));
  open.lot = true;
  CHECK(command_spec(Command::stock_move).enabled(open));
  CHECK_FALSE(command_spec(Command::stock_settle).enabled(open));
  open.busy = true;
  CHECK_FALSE(command_spec(Command::write_orders).enabled(open));
  CHECK(command_spec(Command::quit).enabled(open));
}

TEST_CASE("What the window remembers comes back, and a damaged memory gives the defaults") {
  const auto folder = std::filesystem::temp_directory_path() / "sparewell-memory-test";
  std::filesystem::remove_all(folder);
  const auto file = folder / "deep" / "window.json";
  CHECK(recall(file) == Remembered{});
  const Remembered kept{"/a/clinic.db", "/a/orders",        "/a/in", "shelf", 1200, 700,
                        true,           {"es", "MX", true}, {}};
  CHECK(remember(kept, file));
  CHECK(recall(file) == kept);
  std::ofstream{file} << R"({"page": ["two"]})";
  CHECK(recall(file) == Remembered{});
  // A page that was remembered by its number, before pages had names, is the first one.
  std::ofstream{file} << R"({"page": 3, "width": 1200})";
  CHECK(recall(file).page.empty());
  CHECK(recall(file).width == 1200);
  std::filesystem::remove_all(folder);
}

TEST_CASE("A failure of the store is told with what to do") {
  const auto busy = std::make_exception_ptr(
      store::StoreFailure{store::StoreError::busy, "Another program holds the clinic file."});
  CHECK(describe_failure(busy) ==
        "Another program holds the clinic file. Nothing was changed; try again in a moment.");
}

TEST_CASE("Orders that were written and not sent are gathered by their number") {
  Clinic clinic;
  OrderLine line;
  line.order_ref = "SW-2026-0001";
  line.supplier = {"Tern"};
  line.ordered_on = make_date(2026, 11, 25);
  line.quantity = 3;
  line.state = OrderState::draft;
  OrderLine sent = line;
  sent.order_ref = "SW-2026-0002";
  sent.state = OrderState::placed;
  clinic.order_lines = {line, sent, line};
  const auto drafts = draft_orders(clinic);
  REQUIRE(drafts.size() == 1);
  CHECK(draft_words(drafts[0]) == "SW-2026-0001, Tern: 2 lines, 6 pieces, written 25 Nov 2026");
}

TEST_CASE("The clinic's details are read as typed, and refused with the field's name") {
  const ClinicForm good{"Name", "Street\nTown", "eur", "main store", "97,5", "", "150,5", "20", ""};
  const auto read = read_clinic_form(good);
  REQUIRE(read);
  CHECK(read->currency.code == "EUR");
  CHECK(read->service_target == doctest::Approx(0.975));
  CHECK(clinic_form(*read).service_target == "97.5");
  auto bad = good;
  bad.currency = "euro";
  CHECK(read_clinic_form(bad).error().sentence.starts_with("Currency"));
  bad = good;
  bad.service_target = "100";
  CHECK(read_clinic_form(bad).error().sentence.starts_with("Service target"));
  bad = good;
  bad.main_place = "quarantine shelf";
  CHECK(read_clinic_form(bad).error().sentence.starts_with("Main place"));
  bad = good;
  bad.records_begin = "31.1.2024";
  CHECK(read_clinic_form(bad).error().sentence.starts_with("Records begin"));
  bad.records_begin = "2024-01-31";
  CHECK(read_clinic_form(bad)->records_begin == make_date(2024, 1, 31));
  CHECK(clinic_form(*read_clinic_form(bad)).records_begin == "2024-01-31");
  CHECK(read->costs == OrderCosts{0.2, Money{15050, {"EUR"}}, std::nullopt});
  CHECK(clinic_form(*read).shortage_cost == "150.50");
  CHECK(clinic_form(*read).line_cost.empty());
  bad = good;
  bad.shortage_cost = "much";
  CHECK(read_clinic_form(bad).error().sentence.starts_with("Cost of a missing piece"));
  bad = good;
  bad.line_cost = "-3";
  CHECK(read_clinic_form(bad).error().sentence.starts_with("Cost of an order line"));
  bad = good;
  bad.holding_percent = "120";
  CHECK(read_clinic_form(bad).error().sentence.starts_with("Keeping a piece for a year"));
  bad = good;
  bad.approval_above = "much";
  CHECK(read_clinic_form(bad).error().sentence.starts_with("Approval above"));
  bad.approval_above = "500.5";
  CHECK(read_clinic_form(bad)->approval_above == Money{50050, {"EUR"}});
  CHECK(clinic_form(*read_clinic_form(bad)).approval_above == "500.50");
}

}  // namespace window_words_test
