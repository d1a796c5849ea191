#include "exchange/folder_files.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "exchange/read_table.hpp"

namespace folder_files_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

template <class Record>
struct Read {
  std::vector<Record> records;
  std::vector<std::string> faults;  ///< "line column: reason"
  std::vector<int> copies;
};

/// Reads a file whose amounts are in EUR unless it names a currency.
template <class Record>
Read<Record> read(const Table<Record>& table, std::string bytes, FolderFormat format = {}) {
  const auto specs = column_specs(table);
  const auto file = CsvFile::open(table.file, std::move(bytes), format, specs);
  REQUIRE_MESSAGE(file, (file ? "" : file.error().sentence));
  const CurrencyOf currency_of = [](const CurrencyClues& clues) {
    const auto own = clues.own ? parse_currency(*clues.own) : std::nullopt;
    return own.value_or(Currency{"EUR"});
  };
  Read<Record> made;
  TableReader<Record>{*file, table, format, currency_of}.read([&](ParsedRow<Record>& row) {
    if (row.fault) {
      made.faults.push_back(std::to_string(row.source.line) + " " + row.fault->column + ": " +
                            row.fault->reason);
    } else {
      made.records.push_back(row.record);
      made.copies.push_back(row.copy);
    }
    return true;
  });
  return made;
}

/// The one record of a file with one row.
template <class Record>
Record one(const Table<Record>& table, std::string bytes) {
  auto made = read(table, std::move(bytes));
  CHECK(made.faults == std::vector<std::string>{});
  REQUIRE(made.records.size() == 1);
  return made.records.front();
}

/// The reason why the one row is refused.
template <class Record>
std::string fault(const Table<Record>& table, std::string bytes) {
  const auto made = read(table, std::move(bytes));
  REQUIRE(made.faults.size() == 1);
  return made.faults.front();
}

/// Every word of an enumeration is taken in a column of its own file.
template <class Enum, class Record, class Get>
void check_words(const Table<Record>& table, const std::string& header, const std::string& before,
                 const std::string& after, Get get) {
  const auto list = words<Enum>();
  for (std::size_t i = 0; i < list.size(); ++i) {
    CAPTURE(list[i]);
    const auto record = one(table, header + "\n" + before + std::string{list[i]} + after + "\n");
    CHECK(get(record) == static_cast<Enum>(i));
  }
}

Date day(int year, unsigned month, unsigned d) {
  return make_date(year, month, d);
}

}  // namespace

TEST_CASE("A supplier is read in full and with its name alone") {
  const auto full = one(suppliers_table(),
                        "supplier,order_days,freight,free_freight_from,currency,email,account\n"
                        "Nordpol Teile,Mon;Thu,12.50,500,chf,orders@nordpol.example,K-17\n");
  Supplier expected;
  expected.name.text = "Nordpol Teile";
  expected.order_days.weekdays = 0b0001001;
  expected.freight = Money{1250, {"CHF"}};
  expected.free_freight_from = Money{50000, {"CHF"}};
  expected.currency = {"CHF"};
  expected.email = "orders@nordpol.example";
  expected.account = "K-17";
  CHECK(full == expected);
  Supplier least;
  least.name.text = "Nordpol Teile";
  least.currency = {"EUR"};
  CHECK(one(suppliers_table(), "supplier\nNordpol Teile\n") == least);
}

TEST_CASE("A catalogue line is read in full and at its least") {
  const auto full =
      one(catalogue_table(),
          "item_code,description,kind,attachment,material,size_label,size_min_cm,size_max_cm,size_"
          "at_cm,"
          "constituents,billing_code,supplier,supplier_item,unit_cost,currency,pack_size,min_order,"
          "price_breaks,lead_days,shelf_life_days,thread,gtin,stocked\n"
          "LN-1,\"Liner, \nlocking\",liner,locking,mineral-oil gel,28,27.5,29.5,4,mineral "
          "oil;dye,L5679,"
          "Nordpol Teile,NP 1,100,USD,2,4,10:95.00;20:90,14,720,M10,4006381333931,no\n");
  Item expected;
  expected.code.text = "LN-1";
  expected.description = "Liner, \nlocking";
  expected.kind = Kind::liner;
  expected.attachment = Attachment::locking;
  expected.material = Material::mineral_oil_gel;
  expected.size_label = "28";
  expected.size_min_cm = 27.5;
  expected.size_max_cm = 29.5;
  expected.size_at_cm = 4;
  expected.constituents = {"mineral oil", "dye"};
  expected.billing_code = "L5679";
  expected.supplier.text = "Nordpol Teile";
  expected.supplier_item = "NP 1";
  expected.unit_cost = Money{10000, {"USD"}};
  expected.currency = {"USD"};
  expected.pack_size = 2;
  expected.min_order = 4;
  expected.price_breaks = {{10, {9500, {"USD"}}}, {20, {9000, {"USD"}}}};
  expected.lead_days = 14;
  expected.shelf_life_days = 720;
  expected.thread = "M10";
  expected.gtin = "4006381333931";
  expected.stocked = false;
  CHECK(full == expected);
  Item least;
  least.code.text = "SK-1";
  least.kind = Kind::sock;
  least.currency = {"EUR"};
  CHECK(one(catalogue_table(), "item_code,kind\nSK-1,sock\n") == least);
}

TEST_CASE("Words of the catalogue are all taken") {
  check_words<Kind>(catalogue_table(), "item_code,kind", "A,", "",
                    [](const Item& item) { return item.kind; });
  check_words<Attachment>(catalogue_table(), "item_code,kind,attachment", "A,liner,", "",
                          [](const Item& item) { return item.attachment; });
  check_words<Material>(catalogue_table(), "item_code,kind,material", "A,liner,", "",
                        [](const Item& item) { return item.material; });
}

TEST_CASE("Wrong values of the catalogue are refused") {
  const auto& table = catalogue_table();
  CHECK(fault(table, "item_code,kind\n,liner\n") == "2 item_code: is empty; fill it in");
  CHECK(fault(table, "item_code,kind\nA,\n") == "2 kind: is empty; fill it in");
  CHECK(fault(table, "item_code,kind\nA,shoe\n") ==
        "2 kind: 'shoe' is not one of the allowed words; use one of: liner, sleeve, lock, pin, "
        "valve, "
        "pump, sock");
  CHECK(fault(table, "item_code,kind,size_min_cm,size_max_cm\nA,liner,30,28\n") ==
        "2 size_max_cm: 28 is below size_min_cm 30; correct one of them");
  CHECK(
      fault(table, "item_code,kind,pack_size\nA,liner,0\n").starts_with("2 pack_size: '0' is out"));
  CHECK(fault(table, "item_code,kind,unit_cost\nA,liner,-3\n")
            .starts_with("2 unit_cost: '-3' is be"));
  CHECK(fault(table, "item_code,kind,currency\nA,liner,euro\n").starts_with("2 currency: 'euro'"));
  CHECK(fault(table, "item_code,kind,lead_days\nA,liner,-1\n").starts_with("2 lead_days:"));
  CHECK(fault(table, "item_code,kind,stocked\nA,liner,perhaps\n").starts_with("2 stocked:"));
}

TEST_CASE("A doubtful trade item number is no ground for refusal") {
  const auto item = one(catalogue_table(), "item_code,kind,gtin\nA,liner,4006381333932\n");
  CHECK(catalogue_table().doubt(item) ==
        "gtin '4006381333932' has a check digit that does not fit; a digit may be wrong");
  CHECK(catalogue_table().doubt(Item{}).empty());
}

TEST_CASE("A patient is read in full and by reference alone") {
  Patient expected{{"P1"}, "Ada", "Muster", day(1950, 2, 3), day(2026, 12, 1), "North"};
  CHECK(one(patients_table(),
            "patient_ref,given_name,family_name,birth_date,next_visit,place\n"
            "P1,Ada,Muster,1950-02-03,2026-12-01,North\n") == expected);
  CHECK(one(patients_table(), "patient_ref\nP1\n") == Patient{{"P1"}, "", "", {}, {}});
  CHECK(fault(patients_table(), "patient_ref,birth_date\nP1,1850-01-01\n")
            .starts_with("2 birth_date: '1850-01-01' is not a date from 1900 to 2199"));
  for (const char* place : {"Quarantine", "on loan", "in transit to North", "at supplier Tern"}) {
    CHECK(
        fault(patients_table(), fmt::format("patient_ref,place\nP1,{}\n", place)) ==
        fmt::format("2 place: '{}' is no branch; write the store that serves the patient, or leave "
                    "it empty for the main place",
                    place));
  }
}

TEST_CASE("A prosthesis is read, with every word") {
  const std::string header = "patient_ref,side,level,suspension,stage,delivered_on,ended_on";
  const Prosthesis expected{
      {"P1"},          Side::right,    Level::transfemoral, Suspension::vacuum, Stage::preparatory,
      day(2025, 1, 2), day(2026, 1, 2)};
  CHECK(one(prostheses_table(), header + "\nP1,right,transfemoral,vacuum,preparatory,2025-01-02,"
                                         "2026-01-02\n") == expected);
  const auto& table = prostheses_table();
  check_words<Side>(table, header, "P1,", ",other,pin,,2025-01-02,",
                    [](const Prosthesis& p) { return p.side; });
  check_words<Level>(table, header, "P1,left,", ",pin,,2025-01-02,",
                     [](const Prosthesis& p) { return p.level; });
  check_words<Suspension>(table, header, "P1,left,other,", ",,2025-01-02,",
                          [](const Prosthesis& p) { return p.suspension; });
  check_words<Stage>(table, header, "P1,left,other,pin,", ",2025-01-02,",
                     [](const Prosthesis& p) { return p.stage; });
  CHECK(fault(table, header + "\nP1,left,other,pin,,2025-01-02,2024-01-02\n") ==
        "2 ended_on: 2024-01-02 is before delivered_on 2025-01-02; correct one of them");
}

TEST_CASE("Usage is read in full and with the date alone") {
  const std::string header =
      "patient_ref,from_date,activity,kneeling_hours,wear_hours,sweating,impact_sport";
  const Usage expected{{"P1"}, day(2026, 1, 1), Activity::k3, 0.5, 14.0, Sweating::high, true};
  CHECK(one(usage_table(), header + "\nP1,2026-01-01,k3,0.5,14,HIGH,TRUE\n") == expected);
  CHECK(one(usage_table(), "patient_ref,from_date\nP1,2026-01-01\n") ==
        Usage{{"P1"}, day(2026, 1, 1), {}, {}, {}, {}, {}});
  check_words<Activity>(usage_table(), header, "P1,2026-01-01,", ",,,,",
                        [](const Usage& usage) { return usage.activity; });
  check_words<Sweating>(usage_table(), header, "P1,2026-01-01,,,,", ",",
                        [](const Usage& usage) { return usage.sweating; });
  CHECK(fault(usage_table(), header + "\nP1,2026-01-01,,,25,,\n") ==
        "2 wear_hours: '25' is outside what is possible (hours a day, 0 to 24); correct it");
}

TEST_CASE("A sensitivity is read in full and at its least") {
  CHECK(one(sensitivities_table(),
            "patient_ref,substance,reaction,established_by,noted_on\n"
            "P1,mineral oil,rash,patch test,2026-01-01\n") ==
        Sensitivity{{"P1"}, "mineral oil", "rash", "patch test", day(2026, 1, 1)});
  CHECK(one(sensitivities_table(), "patient_ref,substance\nP1,mineral oil\n") ==
        Sensitivity{{"P1"}, "mineral oil", "", "", {}});
}

TEST_CASE("A measurement is read, and an impossible one refused") {
  const std::string header = "patient_ref,side,measured_on,at_cm,circumference_cm\n";
  CHECK(one(measurements_table(), header + "P1,left,2026-01-01,4,28.5\n") ==
        Measurement{{"P1"}, Side::left, day(2026, 1, 1), 4, 28.5});
  // 285 is a circumference in millimetres.
  CHECK(fault(measurements_table(), header + "P1,left,2026-01-01,4,285\n") ==
        "2 circumference_cm: '285' is outside what is possible (a circumference from 5 to 120 cm); "
        "correct it");
}

TEST_CASE("A reaction is read in full and at its least, and its end is checked") {
  const std::string header = "patient_ref,side,began_on,ended_on,signs,note\n";
  CHECK(one(reactions_table(), header + "P1,left,2026-01-01,2026-01-09,itching;redness,hot\n") ==
        Reaction{
            {"P1"}, Side::left, day(2026, 1, 1), day(2026, 1, 9), {"itching", "redness"}, "hot"});
  CHECK(one(reactions_table(), "patient_ref,began_on,signs\nP1,2026-01-01,rash\n") ==
        Reaction{{"P1"}, {}, day(2026, 1, 1), {}, {"rash"}, ""});
  CHECK(fault(reactions_table(), header + "P1,left,2026-01-05,2026-01-01,rash,\n") ==
        "2 ended_on: 2026-01-01 is before began_on 2026-01-05; correct one of them");
  CHECK(fault(reactions_table(), header + "P1,left,2026-01-05,,,\n") ==
        "2 signs: is empty; fill it in");
}

TEST_CASE("An issued unit is read, and its end is checked") {
  const std::string header =
      "patient_ref,side,item_code,lot,serial,issued_on,ended_on,end_reason,share";
  const auto& table = issued_table();
  Unit expected;
  expected.patient.text = "P1";
  expected.side = Side::right;
  expected.item.text = "LN-1";
  expected.lot = "L7";
  expected.serial = "S9";
  expected.issued_on = day(2025, 1, 1);
  expected.ended_on = day(2025, 6, 1);
  expected.end_reason = EndReason::lost_grip;
  expected.share = 0.5;
  CHECK(one(table, header + "\nP1,right,LN-1,L7,S9,2025-01-01,2025-06-01,lost_grip,0.5\n") ==
        expected);
  check_words<EndReason>(table, header, "P1,right,LN-1,,,2025-01-01,2025-06-01,", ",",
                         [](const Unit& unit) { return unit.end_reason; });
  CHECK(fault(table, header + "\nP1,left,A,,,2025-01-01,2024-12-31,worn,\n") ==
        "2 ended_on: 2024-12-31 is before issued_on 2025-01-01; correct one of them");
  CHECK(fault(table, header + "\nP1,left,A,,,2025-01-01,2025-12-31,,\n")
            .starts_with("2 end_reason: is empty although ended_on is set; write one of: hole,"));
  CHECK(fault(table, header + "\nP1,left,A,,,2025-01-01,,worn,\n") ==
        "2 ended_on: is empty although end_reason is set; write the date, or clear end_reason");
  CHECK(fault(table, header + "\nP1,left,A,,,2025-01-01,,,1.5\n") ==
        "2 share: '1.5' is outside what is possible (a share of the time, 0 to 1); correct it");
}

TEST_CASE("A column copy numbers alike units") {
  const std::string header = "patient_ref,side,item_code,issued_on,copy\n";
  const auto made =
      read(issued_table(), header + "P1,left,A,2025-01-01,\nP1,left,A,2025-01-01,2\n");
  CHECK(made.copies == std::vector<int>{0, 2});
  CHECK(fault(issued_table(), header + "P1,left,A,2025-01-01,0\n").starts_with("2 copy: '0' is"));
}

TEST_CASE("A stock count is read, and a negative one refused") {
  CHECK(one(stock_table(), "item_code,lot,use_by,quantity,place\nA,L7,2027-01-31,3.0,shelf 2\n") ==
        StockCount{{{"A"}, "L7", day(2027, 1, 31)}, 3, "shelf 2"});
  CHECK(one(stock_table(), "item_code,quantity\nA,3\n") == StockCount{{{"A"}, "", {}}, 3, ""});
  CHECK(fault(stock_table(), "item_code,quantity\nA,-3\n") ==
        "2 quantity: '-3' is outside what is possible (0 to 100000 pieces); correct it");
}

TEST_CASE("An order line is placed, and received in full when only the date is given") {
  const std::string header =
      "supplier,order_ref,item_code,ordered_on,quantity,unit_cost,received_on,received_quantity\n";
  const auto& table = orders_table();
  auto line = one(table, header + "Nordpol,O-1,A,2026-01-01,5,2.50,2026-01-09,\n");
  CHECK(line.received_quantity == 5);
  CHECK(line.unit_cost == Money{250, {"EUR"}});
  CHECK(line.state == OrderState::placed);
  line = one(table, header + "Nordpol,O-1,A,2026-01-01,5,,2026-01-09,2\n");
  CHECK(line.received_quantity == 2);
  line = one(table, header + "Nordpol,O-1,A,2026-01-01,5,,,\n");
  CHECK(line.received_quantity == 0);
  CHECK_FALSE(line.received_on);
  CHECK(one(table, "supplier,order_ref,item_code,ordered_on,quantity\nN,O,A,2026-01-01,5\n")
            .outstanding() == 5);
  CHECK(fault(table, header + "Nordpol,O-1,A,2026-01-01,5,,,2\n") ==
        "2 received_on: is empty although received_quantity is set; write the date");
  CHECK(fault(table, header + "Nordpol,O-1,A,2026-01-01,5,,2026-01-09,0\n")
            .starts_with("2 received_quantity: is 0 although"));
  CHECK(fault(table, header + "Nordpol,O-1,A,2026-01-01,5,,2025-01-09,\n")
            .starts_with("2 received_on: 2025-01-09 is before ordered_on"));
  CHECK(fault(table, header + "Nordpol,O-1,A,2026-01-01,-5,,,\n").starts_with("2 quantity: '-5'"));
}

TEST_CASE("A claim line is read in full and at its least") {
  ClaimLine expected;
  expected.claim_ref = "C-1";
  expected.patient.text = "P1";
  expected.side = Side::left;
  expected.service_date = day(2026, 1, 1);
  expected.code = "L5679";
  expected.modifiers = {"LT", "KX"};
  expected.quantity = 2;
  expected.charge = Money{123456, {"EUR"}};
  CHECK(one(claims_table(),
            "claim_ref,patient_ref,side,service_date,code,modifiers,quantity,charge\n"
            "C-1,P1,left,2026-01-01,L5679,LT;KX,2,1234.56\n") == expected);
  expected.side.reset();
  expected.modifiers.clear();
  expected.charge.reset();
  CHECK(one(claims_table(),
            "claim_ref,patient_ref,service_date,code,quantity\n"
            "C-1,P1,2026-01-01,L5679,2\n") == expected);
}

TEST_CASE("An invoice line is read in full and at its least") {
  InvoiceLine expected;
  expected.supplier.text = "Nordpol";
  expected.invoice_ref = "I-1";
  expected.order_ref = "O-1";
  expected.item.text = "A";
  expected.quantity = 5;
  expected.unit_cost = Money{250, {"EUR"}};
  expected.invoiced_on = day(2026, 2, 1);
  CHECK(one(invoices_table(),
            "supplier,invoice_ref,order_ref,item_code,quantity,unit_cost,invoiced_on\n"
            "Nordpol,I-1,O-1,A,5,2.50,2026-02-01\n") == expected);
  expected.order_ref.clear();
  expected.unit_cost.reset();
  expected.invoiced_on.reset();
  CHECK(one(invoices_table(), "supplier,invoice_ref,item_code,quantity\nNordpol,I-1,A,5\n") ==
        expected);
}

TEST_CASE("A row with more or fewer fields than the header is refused, empty surplus tolerated") {
  const std::string header = "patient_ref,given_name\n";
  CHECK(fault(patients_table(), header + "P1\n") ==
        "2 : has 1 fields, but the header has 2; fill in the missing ones");
  CHECK(
      fault(patients_table(), header + "P1,Ada,Muster\n") ==
      "2 : has 3 fields, but the header has 2; put a field that holds the separator into quotation "
      "marks");
  CHECK(one(patients_table(), header + "P1,Ada,, ,\n").given_name == "Ada");
  CHECK(fault(patients_table(), header + "P1,5\" Ada\n")
            .starts_with("2 : has a quotation mark where none can stand"));
}

TEST_CASE("A folder with semicolons, decimal commas and its own dates is read as declared") {
  const FolderFormat format{';', ',', *DatePattern::from_text("DD.MM.YYYY")};
  const auto made = read(measurements_table(),
                         "\xEF\xBB\xBFpatient_ref;side;measured_on;at_cm;circumference_cm\r\n"
                         "P1;left;05.01.2026;4;28,5\r\n\r\nP1;left;06.01.2026;4;28.5\r\n",
                         format);
  REQUIRE(made.records.size() == 1);
  CHECK(made.records[0] == Measurement{{"P1"}, Side::left, day(2026, 1, 5), 4, 28.5});
  REQUIRE(made.faults.size() == 1);
  CHECK(made.faults[0].starts_with("4 circumference_cm: '28.5' has '.' where"));
}

}  // namespace folder_files_test
