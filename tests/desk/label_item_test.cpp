#include "desk/label_item.hpp"

#include <doctest/doctest.h>

namespace label_item_test {

using namespace sparewell;
using desk::item_of_label;
using exchange::Label;

namespace {

Item item(const std::string& code, const std::string& gtin, const std::string& supplier_item) {
  Item made;
  made.code = {code};
  made.gtin = gtin;
  made.supplier_item = supplier_item;
  return made;
}

const std::vector<Item> catalogue{item("A", "6291041500213", "P-10200"),
                                  item("B", "51022222233336", "10/300"),
                                  item("C", "", ""),
                                  item("D", "96385074", "X 1"),
                                  item("E", "00000096385074", "x-1"),
                                  item("F", "not a number at all", "")};

Label gtin(const std::string& number) {
  Label made;
  made.gtin = number;
  return made;
}

Label hibc(const std::string& product) {
  Label made;
  made.maker = "A999";
  made.product = product;
  return made;
}

std::string sentence(const Label& label) {
  const auto found = item_of_label(label, catalogue);
  return found ? "" : found.error().sentence;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("A label's item number finds the item, however many zeros stand in front") {
  CHECK(item_of_label(gtin("06291041500213"), catalogue)->code.text == "A");
  CHECK(item_of_label(gtin("51022222233336"), catalogue)->code.text == "B");
}

TEST_CASE("An HIBC label finds the item by the supplier's number without its signs") {
  CHECK(item_of_label(hibc("P10200"), catalogue)->code.text == "A");
  CHECK(item_of_label(hibc("10300"), catalogue)->code.text == "B");
}

TEST_CASE("Labels that are nobody's, two items' or a larger package's are refused") {
  CHECK(holds(sentence(gtin("00643169001763")), "No item of the catalogue"));
  CHECK(holds(sentence(gtin("00000096385074")), "D and E both"));
  CHECK(holds(sentence(hibc("X1")), "D and E both"));
  CHECK(holds(sentence(hibc("Q")), "No item of the catalogue"));
  CHECK(holds(sentence(Label{}), "does not say what the part is"));
  // The same item with packaging level 1 in front: the digits between are the same.
  CHECK(holds(sentence(gtin("16291041500210")), "another package of A"));
}

}  // namespace label_item_test
