#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <tuple>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "billing/supplier_match_findings.hpp"

namespace sparewell::billing {
namespace {

/// What one invoice says of freight and what it is for.
struct Invoice {
  std::vector<std::size_t> lines;
  std::optional<Date> day;
  std::optional<Money> freight;  ///< stated
  bool mixed = false;            ///< freight in two currencies
  std::set<std::string> orders;
  std::map<std::size_t, int> received;  ///< pieces by order line
};

struct Expected {
  Money most;          ///< that is in order
  bool none_is_right;  ///< none is in order too
  bool free = false;   ///< the goods were worth it
};

using Invoices = std::map<std::string, Invoice>;  ///< by reference

/// Nullopt when a price is not known or not in the currency.
std::optional<Money> goods_value(const Clinic& clinic, const std::map<std::size_t, int>& pieces,
                                 const Currency& currency) {
  Money sum{0, currency};
  for (const auto& [order_line, quantity] : pieces) {
    const auto& cost = clinic.order_lines[order_line].unit_cost;
    if (!cost || cost->currency != currency) return std::nullopt;
    sum = sum + *cost * quantity;
  }
  return sum;
}

class FreightFindings {
 public:
  FreightFindings(const Clinic& clinic, const Supplier& supplier, const Invoices& invoices)
      : clinic_{clinic}, supplier_{supplier}, invoices_{invoices} {
    share_orders_out();
    for (std::size_t at = 0; at < clinic.order_lines.size(); ++at) {
      const OrderLine& line = clinic.order_lines[at];
      if (line.supplier == supplier.name) orders_[line.order_ref][at] = line.quantity;
    }
  }

  void find(std::vector<BillingFinding>& findings) const {
    for (const auto& [reference, invoice] : invoices_) {
      if (const auto finding = of(reference, invoice)) findings.push_back(*finding);
    }
  }

 private:
  static bool charges(const Invoice& invoice) {
    return invoice.freight && invoice.freight->minor > 0;
  }

  /// Which invoice bears the freight of which order: one that charges it, those of the fewest
  /// orders first; of an order for which none does, the earliest.
  void share_orders_out() {
    std::vector<const Invoice*> order_of_choice;
    for (const auto& [reference, invoice] : invoices_) order_of_choice.push_back(&invoice);
    std::ranges::stable_sort(order_of_choice, {}, [](const Invoice* invoice) {
      const bool charging = charges(*invoice);
      return std::tuple{!charging, charging ? invoice->orders.size() : 0,
                        invoice->day.value_or(Date::max())};
    });
    std::set<std::string> is_charged;
    for (const Invoice* invoice : order_of_choice) {
      const bool charging = charges(*invoice);
      auto rest = charging ? times_charged(*invoice) : std::numeric_limits<std::int64_t>::max();
      for (const std::string& order : invoice->orders) {
        if (charging) is_charged.insert(order);
        if (rest == 0 || borne_.contains(order)) continue;
        if (!charging && is_charged.contains(order)) continue;
        borne_.insert(order);
        ++bears_[invoice];
        --rest;
      }
    }
  }

  [[nodiscard]] std::int64_t times_charged(const Invoice& invoice) const {
    if (!supplier_.freight || supplier_.freight->minor == 0) return 1;
    return std::max<std::int64_t>(1, invoice.freight->minor / supplier_.freight->minor);
  }

  [[nodiscard]] bool is_free(const std::map<std::size_t, int>& pieces) const {
    const auto& from = supplier_.free_freight_from;
    if (!from) return false;
    const auto value = goods_value(clinic_, pieces, from->currency);
    return value && *value >= *from;
  }

  /// Nullopt when nothing can be said. Freight is charged once for each order.
  [[nodiscard]] std::optional<Expected> expected(const Invoice& invoice) const {
    const auto currency =
        supplier_.freight ? supplier_.freight->currency : supplier_.free_freight_from->currency;
    if (is_free(invoice.received)) return Expected{{0, currency}, true, true};
    if (!supplier_.freight || invoice.orders.empty()) return std::nullopt;
    const auto bears = bears_.find(&invoice);
    const int orders = bears == bears_.end() ? 0 : bears->second;
    const bool has_free_order = std::ranges::any_of(invoice.orders, [&](const std::string& order) {
      const auto known = orders_.find(order);
      return known != orders_.end() && is_free(known->second);
    });
    return Expected{*supplier_.freight * orders, has_free_order || orders == 0};
  }

  [[nodiscard]] static bool is_right(const Money& stated, const Money& each,
                                     const Expected& expected) {
    if (stated.currency != expected.most.currency) return stated.minor == 0;
    if (stated.minor == 0) return expected.none_is_right;
    return stated <= expected.most && each.minor > 0 && stated.minor % each.minor == 0;
  }

  /// For an invoice without a day.
  [[nodiscard]] Date last_ordered(const Invoice& invoice) const {
    Date last{};
    for (const std::string& order : invoice.orders) {
      const auto known = orders_.find(order);
      if (known == orders_.end()) continue;
      for (const auto& [line, quantity] : known->second) {
        last = std::max(last, clinic_.order_lines[line].ordered_on);
      }
    }
    return last;
  }

  [[nodiscard]] std::optional<BillingFinding> of(const std::string& reference,
                                                 const Invoice& invoice) const {
    const auto wanted = expected(invoice);
    if (!wanted || invoice.mixed) return std::nullopt;
    const Money each = supplier_.freight.value_or(Money{0, wanted->most.currency});
    const Money stated = invoice.freight.value_or(Money{0, wanted->most.currency});
    if (is_right(stated, each, *wanted)) return std::nullopt;
    auto finding = about_invoice(clinic_, invoice.lines.front(), FindingKind::freight_differs);
    finding.key = supplier_key(finding.kind, {supplier_.name.text, reference});
    finding.item = {};
    finding.theirs = 0;
    if (invoice.day) finding.since = *invoice.day;
    // Of several orders on one invoice freight once is what is usual.
    finding.our_amount = std::min(each, wanted->most);
    finding.their_amount = stated;
    finding.money = money_apart(finding.our_amount, stated);
    finding.other = fmt::format("{}", fmt::join(invoice.orders, ", "));
    if (wanted->free) finding.cause = Cause::free_freight_missed;
    finding.evidence.invoice_lines = invoice.lines;
    for (const auto& [order_line, quantity] : invoice.received) {
      finding.evidence.order_lines.push_back(order_line);
    }
    if (!invoice.day) finding.since = last_ordered(invoice);
    return finding;
  }

  const Clinic& clinic_;
  const Supplier& supplier_;
  const Invoices& invoices_;
  std::set<std::string> borne_;          ///< orders whose freight some invoice bears
  std::map<const Invoice*, int> bears_;  ///< of how many orders
  std::map<std::string, std::map<std::size_t, int>> orders_;
};

void take_freight(Invoice& invoice, const Money& freight) {
  if (invoice.freight && invoice.freight->currency != freight.currency) {
    invoice.mixed = true;
  } else {
    invoice.freight = invoice.freight ? *invoice.freight + freight : freight;
  }
}

/// An invoice of which nothing was received, such as a second one, is of the orders that it names.
void name_orders(const Clinic& clinic, std::map<SupplierName, Invoices>& by_supplier) {
  std::set<std::pair<SupplierName, std::string>> known;
  for (const OrderLine& line : clinic.order_lines) known.emplace(line.supplier, line.order_ref);
  for (auto& [supplier, invoices] : by_supplier) {
    for (auto& [reference, invoice] : invoices) {
      if (!invoice.orders.empty()) continue;
      for (const std::size_t at : invoice.lines) {
        const std::string& order = clinic.invoice_lines[at].order_ref;
        if (known.contains({supplier, order})) invoice.orders.insert(order);
      }
    }
  }
}

}  // namespace

void find_freight_differences(const Clinic& clinic, const ClinicIndex& index,
                              const std::vector<SupplierPair>& pairs,
                              std::vector<BillingFinding>& findings) {
  std::map<SupplierName, Invoices> by_supplier;
  std::set<SupplierName> states_freight;
  for (std::size_t at = 0; at < clinic.invoice_lines.size(); ++at) {
    const InvoiceLine& line = clinic.invoice_lines[at];
    Invoice& invoice = by_supplier[line.supplier][line.invoice_ref];
    invoice.lines.push_back(at);
    invoice.day = std::max(invoice.day, line.invoiced_on);
    if (!line.freight) continue;
    take_freight(invoice, *line.freight);
    states_freight.insert(line.supplier);
  }
  for (const SupplierPair& pair : pairs) {
    if (!pair.received) continue;
    const InvoiceLine& line = clinic.invoice_lines[pair.invoice_line];
    Invoice& invoice = by_supplier[line.supplier][line.invoice_ref];
    invoice.orders.insert(clinic.order_lines[pair.order_line].order_ref);
    invoice.received[pair.order_line] += pair.quantity;
  }
  name_orders(clinic, by_supplier);
  for (const auto& [name, invoices] : by_supplier) {
    const Supplier* supplier = index.supplier(name);
    const bool has_terms =
        supplier != nullptr && (supplier->freight || supplier->free_freight_from);
    if (!has_terms || !states_freight.contains(name)) continue;
    FreightFindings{clinic, *supplier, invoices}.find(findings);
  }
}

}  // namespace sparewell::billing
