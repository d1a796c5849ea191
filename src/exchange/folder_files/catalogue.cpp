#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

namespace {

constexpr int most_pieces = 1'000'000;
constexpr int most_days = 3650;

std::optional<Fault> check_sizes(Item& item) {
  if (item.size_min_cm && item.size_max_cm && *item.size_min_cm > *item.size_max_cm) {
    return Fault{"size_max_cm", say("{} is below size_min_cm {}; correct one of them",
                                    *item.size_max_cm, *item.size_min_cm)};
  }
  return std::nullopt;
}

std::string doubt_gtin(const Item& item) {
  const auto doubt = item.gtin.empty() ? "" : gtin_doubt(item.gtin);
  return doubt.empty() ? "" : say("gtin '{}' {}", excerpt(item.gtin), doubt);
}

std::vector<Column<Item>> item_columns() {
  const auto size = number_between(1, 200, to_say("a circumference from 1 to 200 cm"));
  const auto pieces = whole_between(1, most_pieces, to_say("1 piece or more"));
  const auto day_count = whole_between(0, most_days, to_say("0 to 3650 days"));
  return {name_column("item_code", Need::required, &Item::code).key(),
          column("description", Need::optional, &Item::description, read_text),
          word_column("kind", Need::required, &Item::kind),
          word_column("attachment", Need::optional, &Item::attachment),
          word_column("material", Need::optional, &Item::material),
          name_column("size_label", Need::optional, &Item::size_label),
          column("size_min_cm", Need::optional, &Item::size_min_cm, size),
          column("size_max_cm", Need::optional, &Item::size_max_cm, size),
          column("size_at_cm", Need::optional, &Item::size_at_cm,
                 number_between(0, 120, to_say("a height from 0 to 120 cm"))),
          column("constituents", Need::optional, &Item::constituents, read_list),
          name_column("billing_code", Need::optional, &Item::billing_code),
          name_column("supplier", Need::optional, &Item::supplier),
          name_column("supplier_item", Need::optional, &Item::supplier_item),
          column("currency", Need::optional, &Item::currency, read_currency),
          column("unit_cost", Need::optional, &Item::unit_cost, read_money),
          column("pack_size", Need::optional, &Item::pack_size, pieces),
          column("min_order", Need::optional, &Item::min_order,
                 whole_between(0, most_pieces, to_say("0 pieces or more"))),
          column("price_breaks", Need::optional, &Item::price_breaks, read_price_breaks),
          column("lead_days", Need::optional, &Item::lead_days, day_count),
          column("shelf_life_days", Need::optional, &Item::shelf_life_days,
                 whole_between(0, 10 * most_days, to_say("0 to 36500 days"))),
          name_column("thread", Need::optional, &Item::thread),
          name_column("gtin", Need::optional, &Item::gtin),
          column("stocked", Need::optional, &Item::stocked, read_yes_no),
          column("warranty_days", Need::optional, &Item::warranty_days, day_count)};
}

}  // namespace

const Table<Item>& catalogue_table() {
  static const Table<Item> table{
      .file = "catalogue.csv",
      .columns = item_columns(),
      .has_amounts = true,
      .start = [](Item& item, const Currency& currency) { item.currency = currency; },
      .check = check_sizes,
      .doubt = doubt_gtin};
  return table;
}

}  // namespace sparewell::exchange
