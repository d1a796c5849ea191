#include <memory>
#include <string>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/help_pictures/diagram.hpp"
#include "desk/help_pictures/examples.hpp"
#include "desk/stock_picture.hpp"
#include "supply/item_course.hpp"

namespace sparewell::desk {
namespace {

const char* const example_supplier = "Example Supplies";

/// Thirty people wear a liner of one size, which comes in packs of eight. Five lie on the shelf and
/// two are on order.
supply::ItemCourse course_of_liners() {
  Clinic clinic;
  Supplier supplier;
  supplier.name = {example_supplier};
  supplier.order_days = *parse_order_days("Wed");
  clinic.suppliers = {supplier};
  Item item;
  item.code = {"LN01-26"};
  item.supplier = supplier.name;
  item.lead_days = 42;
  item.pack_size = 8;
  clinic.items = {item};
  std::vector<wear::LifeOfUnit> lives;
  for (int i = 0; i < 30; ++i) {
    Unit unit;
    unit.patient = {fmt::format("P-{}", 1 + i)};
    unit.item = item.code;
    const int age = 5 + 9 * i;
    unit.issued_on = example_day - days{age};
    lives.push_back(
        {clinic.units.size(),
         wear::UnitLife{example_day, double(age), 3.0, 300.0, {{unit.issued_on, 1.0}}}});
    clinic.units.push_back(std::move(unit));
  }
  clinic.shelf = {{{item.code, "A17", example_day + days{70}}, "main store", 2},
                  {{item.code, "B14", std::nullopt}, "main store", 3}};
  OrderLine line;
  line.supplier = supplier.name;
  line.order_ref = "PO-31";
  line.item = item.code;
  line.ordered_on = example_day - days{28};
  line.quantity = 2;
  clinic.order_lines = {line};
  const auto policy = supply::policy_of(clinic.settings);
  const auto lines = supply::propose(clinic, lives, example_day, policy).lines;
  supply::ItemCourses courses{clinic, lives, example_day, policy};
  return courses.of(item.code, lines.empty() ? nullptr : &lines.front()).value();
}

}  // namespace

picture::Maker ordering_example() {
  // Figures alone; the words are made when it is drawn.
  static const auto course = std::make_shared<const supply::ItemCourse>(course_of_liners());
  return as_example(stock_picture(course), said("Help with ordering: an example"),
                    said("An example: how long the stock of a liner that 30 people wear may last"));
}

}  // namespace sparewell::desk
