#include <algorithm>
#include <map>

#include "billing/supplier_match_findings.hpp"

namespace sparewell::billing {
namespace {

/// What so many pieces cost each by the catalogue of today.
std::optional<Money> catalogue_price(const Item& item, int quantity) {
  std::optional<Money> price = item.unit_cost;
  int from = 0;
  for (const PriceBreak& step : item.price_breaks) {
    if (step.from_quantity > quantity || step.from_quantity < from) continue;
    from = step.from_quantity;
    price = step.unit_cost;
  }
  return price;
}

bool is_price_of_fewer(const Item& item, int quantity, const Money& price) {
  const auto whole = catalogue_price(item, quantity);
  if (!whole || *whole == price) return false;
  if (item.unit_cost == price) return true;
  return std::ranges::any_of(item.price_breaks, [&](const PriceBreak& step) {
    return step.from_quantity < quantity && step.unit_cost == price;
  });
}

Cause cause_of(const Item* item, const OrderLine& order, const InvoiceLine& invoice) {
  if (item != nullptr) {
    const Money& invoiced = *invoice.unit_cost;
    if (invoiced == catalogue_price(*item, order.quantity)) return Cause::price_list_changed;
    if (invoiced > *order.unit_cost && is_price_of_fewer(*item, order.quantity, invoiced)) {
      return Cause::price_break_missed;
    }
    if (invoiced == item->unit_cost) return Cause::price_list_changed;
  }
  return order.order_ref == invoice.order_ref ? Cause::unknown : Cause::other_order;
}

}  // namespace

void find_price_differences(const Clinic& clinic, const ClinicIndex& index,
                            const std::vector<SupplierPair>& pairs,
                            std::vector<BillingFinding>& findings) {
  std::map<std::pair<std::size_t, std::size_t>, int> pieces;
  for (const SupplierPair& pair : pairs) {
    pieces[{pair.invoice_line, pair.order_line}] += pair.quantity;
  }
  for (const auto& [lines, quantity] : pieces) {
    const auto [invoice_line, order_line] = lines;
    const InvoiceLine& invoice = clinic.invoice_lines[invoice_line];
    const OrderLine& order = clinic.order_lines[order_line];
    if (!invoice.unit_cost || !order.unit_cost || *invoice.unit_cost == *order.unit_cost) continue;
    auto finding = about_invoice(clinic, invoice_line, FindingKind::price_differs);
    finding.key =
        supplier_key(finding.kind, {invoice.supplier.text, invoice.invoice_ref, invoice.order_ref,
                                    invoice.item.text, std::to_string(invoice.copy),
                                    order.order_ref, std::to_string(order.copy)});
    if (!invoice.invoiced_on) finding.since = order.received_on.value_or(order.ordered_on);
    finding.quantity = finding.ours = finding.theirs = quantity;
    finding.our_amount = order.unit_cost;
    if (const auto each = money_apart(order.unit_cost, invoice.unit_cost)) {
      finding.money = *each * quantity;
    }
    finding.other = order.order_ref;
    finding.other_day = order.ordered_on;
    finding.cause = cause_of(index.item(invoice.item), order, invoice);
    finding.evidence.order_lines.push_back(order_line);
    findings.push_back(std::move(finding));
  }
}

}  // namespace sparewell::billing
