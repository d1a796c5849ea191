#include "desk/prices/price_update.hpp"

#include <random>

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"
#include "desk/prices/price_words.hpp"
#include "desk/row_words.hpp"

namespace price_update_test {

using namespace sparewell;
using namespace sparewell::test;
using desk::PriceAcceptance;

namespace {

struct PricedClinic {
  PricedClinic() {
    folder.write("suppliers.csv", "supplier,currency\nTern,EUR\n");
    folder.write("catalogue.csv",
                 "item_code,description,kind,material,supplier,supplier_item,unit_cost,currency,"
                 "pack_size,gtin\nL-1,Liner,liner,silicone,Tern,T-1,100,EUR,1,51022222233336\n"
                 "S-1,Sock,sock,fabric,Tern,T-2,2,EUR,6,\n"
                 "V-1,Valve,valve,other,Tern,T-3,30,EUR,1,\n");
    import(*store, folder.path());
  }
  Expected<desk::PriceListOutcome> take(const std::string& text,
                                        PriceAcceptance acceptance = PriceAcceptance::nothing,
                                        std::map<std::string, std::string> columns = {}) {
    folder.write("list.csv", text);
    desk::PriceListRequest request;
    request.file = folder.path() / "list.csv";
    request.supplier = {"Tern"};
    request.columns = std::move(columns);
    return desk::update_prices(*store, request, acceptance, "tester");
  }
  [[nodiscard]] Item item(const std::string& code) const {
    return store->read()->item({code})->record;
  }
  ClinicFolder folder;
  std::unique_ptr<store::Store> store = empty_store();
};

const std::string list =
    "Prices 2027,,,,\n,,,,\nArticle No.,Description,Price (EUR),Pack size,Price from 10\n"
    "T-1,Liner,104.00,1,99\nT-2,Sock,12.00,6,\nLiners,,,,\nT-9,New,5,,\nT-3,Valve,x,1,\n";

}  // namespace

TEST_CASE("A list is shown, sure changes are accepted in one unit of work, doubtful ones are not") {
  PricedClinic clinic;
  const auto shown = clinic.take(list);
  REQUIRE(shown.has_value());
  CHECK(shown->found.changes.size() == 2);
  CHECK(shown->found.unknown.size() == 1);
  // The valve's row was refused, and yet the valve is on the list.
  CHECK(shown->found.missing.empty());
  REQUIRE(shown->found.refused.size() == 1);
  CHECK(shown->found.refused[0].row == 8);
  CHECK(shown->found.refused[0].field == "unit_cost");
  CHECK(clinic.item("L-1").unit_cost == Money{10000, {"EUR"}});
  CHECK(desk::price_line(shown->found.changes[0]) ==
        "L-1: unit cost 100.00 EUR to 104.00 EUR, up 4.0 %; price breaks none to 99.00 EUR from "
        "10.");
  CHECK(desk::price_line(shown->found.changes[1]).find("price of a pack of 6") !=
        std::string::npos);

  const auto accepted = clinic.take(list, PriceAcceptance::sure);
  CHECK(accepted->written == 1);
  CHECK(accepted->held_back == 1);
  CHECK(clinic.item("L-1").unit_cost == Money{10400, {"EUR"}});
  CHECK(clinic.item("L-1").price_breaks.size() == 1);
  CHECK(clinic.item("S-1").unit_cost == Money{200, {"EUR"}});
  const auto change = clinic.store->read()->changes(1).front();
  CHECK(change.why == "price list list.csv of Tern");
  CHECK(change.before.find("10000") != std::string::npos);

  CHECK(clinic.take(list, PriceAcceptance::doubtful_too)->written == 1);
  CHECK(clinic.item("S-1").unit_cost == Money{1200, {"EUR"}});
  CHECK(desk::price_table(*shown).size() == 4);
  const auto table = desk::price_table(*shown);
  CHECK(table.at(0).cells[0].text == "Doubtful: look at it");
  CHECK(desk::row_words(table, "0").starts_with("Standing: Doubtful: look at it\nItem: S-1\n"));
  CHECK(desk::row_words(table, "99").empty());
}

TEST_CASE("Headings can be named, unknown ones are told, and a list without any is refused") {
  PricedClinic clinic;
  const auto named = clinic.take("Nummer,Preis,Farbe\nT-1,101,red\n", PriceAcceptance::nothing,
                                 {{"supplier_item", "Nummer"}, {"price", "preis"}});
  REQUIRE(named.has_value());
  CHECK(named->found.changes.size() == 1);
  CHECK(named->ignored == std::vector<std::string>{"Farbe"});
  CHECK_FALSE(clinic.take("a,b\n1,2\n").has_value());
  CHECK_FALSE(clinic.take("Part no,Price,Net price\nT-1,1,2\n").has_value());
  CHECK_FALSE(clinic.take("x\n", PriceAcceptance::nothing, {{"colour", "x"}}).has_value());
  CHECK(desk::read_headings(" unit_cost = Preis ; code=Nr ")->size() == 2);
  CHECK_FALSE(desk::read_headings("unit_cost").has_value());
  // One column of codes serves for the supplier's numbers and the clinic's.
  CHECK(clinic.take("Code,Price\nT-1,101\nV-1,31\n")->found.changes.size() == 2);
  desk::PriceListRequest unknown;
  unknown.file = clinic.folder.path() / "list.csv";
  unknown.supplier = {"Nobody"};
  CHECK_FALSE(desk::update_prices(*clinic.store, unknown, PriceAcceptance::nothing, "t"));
}

TEST_CASE("Figures that are none are refused with their row and field") {
  PricedClinic clinic;
  const auto found = clinic.take(
      "Part no,Price,Currency,Pack,MOQ,Lead time\nT-1,1.005,EUR,1,1,3\nT-2,2,Euro,6,1,3\n"
      "T-3,30,EUR,0,1,3\nT-1,100,EUR,1,1.5,3\n,7,EUR,1,1,3\nT-2,-2,EUR,6,1,3\n");
  REQUIRE(found.has_value());
  std::vector<std::string> fields;
  for (const auto& refused : found->found.refused) fields.push_back(refused.field);
  CHECK(fields == std::vector<std::string>{"unit_cost", "currency", "pack_size", "min_order", "",
                                           "unit_cost"});
  CHECK(found->found.changes.empty());
}

TEST_CASE("Lists with changed bytes are read or refused, and never accepted half") {
  PricedClinic clinic;
  std::mt19937 random{11};
  for (int i = 0; i < 300; ++i) {
    auto text = list;
    for (int n = 0; n < 1 + i % 4; ++n) text[random() % text.size()] = static_cast<char>(random());
    const auto outcome = clinic.take(text);
    if (!outcome) CHECK(outcome.error().sentence.ends_with('.'));
  }
  CHECK(clinic.item("L-1").unit_cost == Money{10000, {"EUR"}});
}

}  // namespace price_update_test
