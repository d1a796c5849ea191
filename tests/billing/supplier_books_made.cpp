#include "billing/supplier_books_made.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace sparewell::billing::testing {
namespace {

/// What happens to a line of an order on its way to the invoice.
enum class Story {
  plain,
  // In order.
  split_delivery,  ///< and an invoice for each
  wrong_reference,
  no_reference,
  apart,                ///< on an invoice of its own that names the order before
  with_the_one_before,  ///< on one invoice for both orders
  rest_cancelled,
  // Not in order.
  too_many,
  price,
  twice,
  left_out,
  rest_not_invoiced,
  short_delivery
};
constexpr int stories = 13;

class Maker {
 public:
  Maker(std::uint64_t seed, Date today) : random_{seed}, today_{today} {}

  SupplierBooksMade make() {
    add_supplier("Firth Supplies", "EUR", 1800, 150000);
    add_supplier("Glen Parts", "EUR", 1250, {});
    add_supplier("Moor Imports", "USD", {}, {});
    for (std::size_t at = 0; at < 3; ++at) {
      for (int item = 0; item < 4; ++item) add_item(at, item);
      trade(at);
    }
    std::ranges::shuffle(made_.clinic.order_lines, random_);
    std::ranges::shuffle(made_.clinic.invoice_lines, random_);
    return std::move(made_);
  }

 private:
  int whole(int from, int to) { return std::uniform_int_distribution{from, to}(random_); }

  void add_supplier(const char* name, const char* currency, std::optional<int> freight,
                    std::optional<int> free_from) {
    Supplier supplier;
    supplier.name = {name};
    supplier.currency = {currency};
    if (freight) supplier.freight = Money{*freight, supplier.currency};
    if (free_from) supplier.free_freight_from = Money{*free_from, supplier.currency};
    made_.clinic.suppliers.push_back(supplier);
  }

  void add_item(std::size_t supplier, int number) {
    Item item;
    item.code = {fmt::format("{}{}", static_cast<char>('F' + supplier), number)};
    item.supplier = made_.clinic.suppliers[supplier].name;
    item.currency = made_.clinic.suppliers[supplier].currency;
    item.unit_cost = Money{whole(900, 60000), item.currency};
    made_.clinic.items.push_back(item);
  }

  /// An order every few weeks; a line has a story of its own only when the ones before and after
  /// it are plain for half a year, so that each has one explanation.
  void trade(std::size_t at) {
    const Supplier& supplier = made_.clinic.suppliers[at];
    Date day = today_ - days{1100};
    std::vector<int> since_story(4, 100);
    std::vector<int> before(4, -1);  ///< position of the last order line of the item
    while (day < today_ - days{120}) {
      const std::string order = fmt::format("PO-{}-{}", at, ++orders_);
      std::vector<Story> told;
      std::vector<std::size_t> lines;
      bool has_story = false;
      for (std::size_t item = 0; item < 4; ++item) {
        if (whole(0, 2) == 0) continue;
        Story story = Story::plain;
        if (!has_story && since_story[item] > 9 && whole(0, 1) == 0 && before[item] >= 0) {
          story = static_cast<Story>(whole(1, stories - 1));
          since_story[item] = 0;
          has_story = true;
        }
        ++since_story[item];
        lines.push_back(order_line(supplier, order, at * 4 + item, day));
        told.push_back(story);
        before_of_line_.push_back(before[item]);
        before[item] = static_cast<int>(lines.back());
      }
      invoice(supplier, order, lines, told);
      before_of_line_.clear();
      day += days{whole(20, 40)};
    }
  }

  std::size_t order_line(const Supplier& supplier, const std::string& order, std::size_t item,
                         Date day) {
    Item& what = made_.clinic.items[item];
    if (whole(0, 9) == 0) what.unit_cost->minor += whole(1, 300);
    OrderLine line;
    line.supplier = supplier.name;
    line.order_ref = order;
    line.item = what.code;
    line.ordered_on = day;
    line.quantity = line.received_quantity = whole(2, 12);
    line.unit_cost = what.unit_cost;
    line.received_on = day + days{whole(3, 15)};
    made_.clinic.order_lines.push_back(line);
    return made_.clinic.order_lines.size() - 1;
  }

  InvoiceLine& add(const OrderLine& line, const std::string& reference, int quantity, Date day) {
    InvoiceLine made;
    made.supplier = line.supplier;
    made.invoice_ref = reference;
    made.order_ref = line.order_ref;
    made.item = line.item;
    made.quantity = quantity;
    made.unit_cost = line.unit_cost;
    made.invoiced_on = day;
    made_.clinic.invoice_lines.push_back(made);
    return made_.clinic.invoice_lines.back();
  }

  void plant(FindingKind kind, const OrderLine& line, const std::string& reference, int quantity,
             std::int64_t minor) {
    made_.planted.push_back({kind, line.supplier, line.item, reference, quantity, minor});
  }

  void invoice(const Supplier& supplier, const std::string& order,
               const std::vector<std::size_t>& lines, const std::vector<Story>& told) {
    const std::string reference = fmt::format("INV{}", order.substr(2));
    const int days_later = whole(16, 19);
    if (lines.empty()) return;
    const Date day = made_.clinic.order_lines[lines.front()].ordered_on + days{days_later};
    std::int64_t goods = 0;
    std::int64_t ordered = 0;
    bool is_there = false;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      OrderLine& line = made_.clinic.order_lines[lines[i]];
      const int received = tell(told[i], line, reference, day, before_of_line_[i]);
      goods += line.unit_cost->minor * received;
      ordered += line.unit_cost->minor * line.quantity;
      is_there |= told[i] != Story::left_out && told[i] != Story::apart;
    }
    if (!supplier.freight) return;
    if (is_there) {
      charge_freight(supplier, reference, goods, ordered);
    } else if (told.front() == Story::apart) {
      charge_freight(supplier, fmt::format("{}-C", reference), ordered, ordered);
    }
  }

  /// Writes the invoice of one line; returns the pieces on `reference` that were received.
  int tell(Story story, OrderLine& line, const std::string& reference, Date day, int before) {
    const int quantity = line.quantity;
    const int some = whole(1, quantity - 1);
    const std::int64_t cost = line.unit_cost->minor;
    if (story != Story::plain && story < Story::too_many) ++made_.oddities;
    switch (story) {
      case Story::plain:
        break;
      case Story::split_delivery:
        line.received_on = day + days{whole(5, 40)};
        add(line, reference, some, day);
        add(line, fmt::format("{}-B", reference), quantity - some, *line.received_on + days{3});
        return some;
      case Story::wrong_reference:
        add(line, reference, quantity, day).order_ref = before_line(before).order_ref;
        return quantity;
      case Story::no_reference:
        add(line, reference, quantity, day).order_ref.clear();
        return quantity;
      case Story::apart:
        add(line, fmt::format("{}-C", reference), quantity, day).order_ref =
            before_line(before).order_ref;
        return 0;
      case Story::with_the_one_before: {
        const OrderLine& first = before_line(before);
        const bool charges_freight = first.supplier.text != "Moor Imports";
        if (charges_freight || day - *first.received_on > days{90}) break;
        std::erase_if(made_.clinic.invoice_lines, [&](const InvoiceLine& written) {
          return written.order_ref == first.order_ref && written.item == first.item;
        });
        const bool same_price = first.unit_cost == line.unit_cost;
        if (!same_price) add(first, reference, first.quantity, day);
        add(line, reference, quantity + (same_price ? first.quantity : 0), day);
        return quantity;
      }
      case Story::rest_cancelled:
        line.received_quantity = some;
        line.state = OrderState::cancelled;
        add(line, reference, some, day);
        return some;
      case Story::too_many: {
        const int more = whole(1, 3);
        add(line, reference, quantity + more, day);
        plant(FindingKind::invoiced_not_received, line, reference, more, -cost * more);
        return quantity;
      }
      case Story::price: {
        const int apart = whole(1, 500) * (whole(0, 3) == 0 ? -1 : 1);
        add(line, reference, quantity, day).unit_cost->minor += apart;
        plant(FindingKind::price_differs, line, reference, quantity,
              -std::int64_t{apart} * quantity);
        return quantity;
      }
      case Story::twice:
        add(line, reference, quantity, day);
        add(line, fmt::format("{}-D", reference), quantity, day + days{whole(0, 20)});
        plant(FindingKind::invoiced_twice, line, fmt::format("{}-D", reference), quantity,
              -cost * quantity);
        return quantity;
      case Story::left_out:
        plant(FindingKind::received_not_invoiced, line, line.order_ref, quantity, -cost * quantity);
        return 0;
      case Story::rest_not_invoiced:
        add(line, reference, some, day);
        plant(FindingKind::received_not_invoiced, line, line.order_ref, quantity - some,
              -cost * (quantity - some));
        return some;
      case Story::short_delivery:
        line.received_quantity = some;
        add(line, reference, quantity, day);
        plant(FindingKind::invoiced_not_received, line, reference, quantity - some,
              -cost * (quantity - some));
        return some;
    }
    add(line, reference, quantity, day);
    return quantity;
  }

  [[nodiscard]] const OrderLine& before_line(int at) const {
    return made_.clinic.order_lines[static_cast<std::size_t>(at)];
  }

  /// On the last line written for the invoice; wrong on one in fifteen.
  void charge_freight(const Supplier& supplier, const std::string& reference, std::int64_t goods,
                      std::int64_t ordered) {
    auto& lines = made_.clinic.invoice_lines;
    const auto line = std::ranges::find(lines, reference, &InvoiceLine::invoice_ref);
    if (line == lines.end()) return;
    const auto& from = supplier.free_freight_from;
    const bool is_free = from && goods >= from->minor;
    const bool may_be_free = from && ordered >= from->minor;
    const std::int64_t right = is_free || may_be_free ? 0 : supplier.freight->minor;
    std::int64_t stated = right;
    // Of an order that is worth free freight and comes short both are in order.
    if (whole(0, 14) == 0 && is_free == may_be_free) {
      stated = whole(0, 1) == 0 && right > 0 ? 0 : right + whole(1, 5) * 100;
      made_.planted.push_back(
          {FindingKind::freight_differs, supplier.name, {}, reference, 0, right - stated});
    }
    if (stated > 0 || whole(0, 1) == 0) line->freight = Money{stated, supplier.currency};
  }

  std::mt19937_64 random_;
  Date today_;
  SupplierBooksMade made_;
  int orders_ = 0;
  std::vector<int> before_of_line_;
};

}  // namespace

SupplierBooksMade make_supplier_books(std::uint64_t seed, Date today) {
  return Maker{seed, today}.make();
}

}  // namespace sparewell::billing::testing
