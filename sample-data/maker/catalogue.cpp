#include "catalogue.hpp"

#include <fmt/format.h>

#include "model_table.hpp"

namespace sparewell::sample {
namespace {

Money amount(std::int64_t minor, const char* currency) {
  return Money{minor, Currency{currency}};
}

Supplier supplier(const char* name, const char* order_days, const char* currency) {
  Supplier made;
  made.name.text = name;
  made.order_days = *parse_order_days(order_days);
  made.currency = Currency{currency};
  return made;
}

std::vector<Supplier> make_suppliers() {
  std::vector<Supplier> made{supplier("Pebble & Thistle Limb Supplies", "Tue;Fri", "EUR"),
                             supplier("Moonmeadow Fitments", "Mon;Thu", "EUR"),
                             supplier("Copperfinch Imports", "14", "USD"),
                             supplier("Larkspindle Knitting, Ltd.", "", "EUR")};
  made[0].freight = amount(1800, "EUR");
  made[0].free_freight_from = amount(150000, "EUR");
  made[0].email = "orders@pebble-thistle.example";
  made[0].account = "PT-20417";
  made[1].freight = amount(1250, "EUR");
  made[1].free_freight_from = amount(75000, "EUR");
  made[1].email = "desk@moonmeadow.example";
  made[1].account = "00731";
  made[2].freight = amount(6500, "USD");
  made[2].email = "export@copperfinch.example";
  made[3].freight = amount(690, "EUR");
  made[3].free_freight_from = amount(20000, "EUR");
  return made;
}

/// A number of the range that shops give out for their own use (GS1 prefixes 20 to 29), so that it
/// belongs to nobody, with its check digit: weights 3, 1, 3 ... from the right.
std::string own_gtin(std::size_t number) {
  const std::string body = fmt::format("029000{:07}", 1000 + 7 * number);
  int sum = 0;
  for (std::size_t i = 0; i < body.size(); ++i) sum += (body[i] - '0') * (i % 2 == 0 ? 3 : 1);
  return body + std::to_string((10 - sum % 10) % 10);
}

Item plain_item(const ModelRow& row, const Supplier& from) {
  Item item;
  item.kind = row.kind;
  item.attachment = row.attachment;
  item.material = row.material;
  item.constituents = row.constituents;
  item.billing_code = row.billing_code;
  item.supplier = from.name;
  item.currency = from.currency;
  item.unit_cost = Money{row.unit_cost, from.currency};
  item.pack_size = row.pack_size;
  item.min_order = row.min_order;
  for (const auto& price_break : row.price_breaks) {
    item.price_breaks.push_back({price_break.from, Money{price_break.unit_cost, from.currency}});
  }
  if (row.lead_days > 0) item.lead_days = row.lead_days;
  if (row.shelf_life_days > 0) item.shelf_life_days = row.shelf_life_days;
  item.thread = row.thread;
  item.stocked = row.stocked;
  return item;
}

Item sized_item(const ModelRow& row, const Supplier& from, int size, std::size_t number) {
  Item item = plain_item(row, from);
  if (row.sizes.count == 1) {
    item.code.text = row.code;
    item.description = row.description;
  } else {
    item.size_min_cm = row.sizes.first_cm + row.sizes.step_cm * size;
    item.size_max_cm = *item.size_min_cm + row.sizes.step_cm;
    item.size_at_cm = row.sizes.at_cm;
    item.size_label = row.sizes.labels.empty() ? fmt::format("{:g}", *item.size_min_cm)
                                               : row.sizes.labels[static_cast<std::size_t>(size)];
    item.code.text = fmt::format("{}-{}", row.code, item.size_label);
    item.description = fmt::format("{}, size {}", row.description, item.size_label);
  }
  item.supplier_item = fmt::format("{}{:05}", from.name.text.substr(0, 1), 10200 + 13 * number);
  if (row.has_gtin) item.gtin = own_gtin(number);
  return item;
}

}  // namespace

const Item& Catalogue::first_of(ModelId model) const {
  return items[models[static_cast<std::size_t>(model)].items.front()];
}

std::size_t Catalogue::fitting(ModelId model, double circumference_cm) const {
  const auto& sizes = models[static_cast<std::size_t>(model)].items;
  for (const std::size_t position : sizes) {
    const auto& most = items[position].size_max_cm;
    if (!most || circumference_cm <= *most) return position;
  }
  return sizes.back();
}

Catalogue make_catalogue() {
  Catalogue made;
  made.suppliers = make_suppliers();
  for (const ModelRow& row : model_table()) {
    Model model;
    for (int size = 0; size < row.sizes.count; ++size) {
      model.items.push_back(made.items.size());
      made.items.push_back(sized_item(row, made.suppliers[row.supplier], size, made.items.size()));
    }
    made.models.push_back(std::move(model));
  }
  return made;
}

}  // namespace sparewell::sample
