/// Columns of suppliers and items.
#pragma once

#include "clinic/item.hpp"
#include "clinic/say.hpp"
#include "clinic/supplier.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<Supplier> {
  static constexpr Subject subject{to_say("supplier"), to_say("name")};
  static constexpr const char* name = "suppliers";

  template <class Fields, class S>
  static void describe(Fields& f, S& supplier) {
    f("name", supplier.name.text);
    f("order_weekdays", supplier.order_days.weekdays);
    f("order_every_days", supplier.order_days.every_days);
    f("freight", supplier.freight);
    f("free_freight_from", supplier.free_freight_from);
    f("currency", supplier.currency);
    f("email", supplier.email);
    f("account", supplier.account);
  }
};

template <>
struct Table<Item> {
  static constexpr Subject subject{to_say("item"), to_say("code")};
  static constexpr const char* name = "items";

  template <class Fields, class I>
  static void describe(Fields& f, I& item) {
    f("code", item.code.text);
    f("description", item.description);
    f("kind", item.kind);
    f("attachment", item.attachment);
    f("material", item.material);
    f("size_label", item.size_label);
    f("size_min_cm", item.size_min_cm);
    f("size_max_cm", item.size_max_cm);
    f("size_at_cm", item.size_at_cm);
    f("billing_code", item.billing_code);
    f.reference_or_none("supplier_id", item.supplier);
    f("supplier_item", item.supplier_item);
    f("unit_cost", item.unit_cost);
    f("currency", item.currency);
    f("pack_size", item.pack_size);
    f("min_order", item.min_order);
    f("lead_days", item.lead_days);
    f("shelf_life_days", item.shelf_life_days);
    f("thread", item.thread);
    f("gtin", item.gtin);
    f("stocked", item.stocked);
    f("warranty_days", item.warranty_days);
  }
};

}  // namespace sparewell::store::sqlite
