#include <algorithm>
#include <map>

#include "billing/supplier_match_findings.hpp"

namespace sparewell::billing {
namespace {

/// What became of the pieces of one invoice line.
struct InvoicedPieces {
  int received = 0;
  int on_order = 0;
  std::vector<std::size_t> orders;  ///< by order line, those of pieces that came first
};

/// What became of the pieces that came on one order line.
struct ReceivedPieces {
  int invoiced = 0;
  std::optional<Date> last_invoice;
  std::vector<std::size_t> invoices;
};

class PieceFindings {
 public:
  PieceFindings(const Clinic& clinic, const SupplierLines& lines,
                const std::vector<SupplierPair>& pairs, Date today, const SupplierTerms& terms)
      : clinic_{clinic}, lines_{lines}, today_{today}, terms_{terms} {
    for (const SupplierPair& pair : pairs) {
      InvoicedPieces& of_invoice = invoiced_[pair.invoice_line];
      (pair.received ? of_invoice.received : of_invoice.on_order) += pair.quantity;
      of_invoice.orders.push_back(pair.order_line);
      if (!pair.received) continue;
      ReceivedPieces& of_order = received_[pair.order_line];
      of_order.invoiced += pair.quantity;
      of_order.invoices.push_back(pair.invoice_line);
      of_order.last_invoice =
          std::max(of_order.last_invoice, clinic.invoice_lines[pair.invoice_line].invoiced_on);
    }
  }

  void find(std::vector<BillingFinding>& findings) {
    for (const std::size_t at : lines_.orders) {
      if (auto finding = of_order(at)) findings.push_back(std::move(*finding));
    }
    for (const std::size_t at : lines_.invoices) {
      if (auto finding = of_invoice(at)) findings.push_back(std::move(*finding));
    }
  }

 private:
  [[nodiscard]] std::optional<BillingFinding> of_order(std::size_t at) {
    const OrderLine& order = clinic_.order_lines[at];
    const ReceivedPieces& pieces = received_[at];
    const int missing = order.received_quantity - pieces.invoiced;
    const Date since = order.received_on.value_or(order.ordered_on);
    if (missing <= 0 || days_between(since, today_) <= terms_.invoice_days) return std::nullopt;
    BillingFinding finding;
    finding.kind = FindingKind::received_not_invoiced;
    finding.key = supplier_key(finding.kind, {order.supplier.text, order.order_ref, order.item.text,
                                              std::to_string(order.copy)});
    finding.item = order.item;
    finding.supplier = order.supplier;
    finding.reference = order.order_ref;
    finding.since = since;
    finding.quantity = missing;
    finding.ours = order.received_quantity;
    finding.theirs = pieces.invoiced;
    finding.our_amount = order.unit_cost;
    if (order.unit_cost) finding.money = *order.unit_cost * -missing;
    const bool came_later = pieces.last_invoice && *pieces.last_invoice < since;
    finding.cause = came_later ? Cause::second_delivery : Cause::not_recorded;
    finding.remedy = Remedy::ask_invoice;
    finding.evidence.order_lines.push_back(at);
    finding.evidence.invoice_lines = pieces.invoices;
    return finding;
  }

  [[nodiscard]] std::optional<BillingFinding> of_invoice(std::size_t at) {
    const InvoiceLine& line = clinic_.invoice_lines[at];
    const InvoicedPieces& pieces = invoiced_[at];
    const int left_over = line.quantity - pieces.received - pieces.on_order;
    const int late = is_late(line) ? pieces.on_order : 0;
    if (left_over + late == 0) return std::nullopt;
    const auto twin = pieces.received == 0 && left_over > 0 ? earlier_alike(at) : std::nullopt;
    auto finding = about_invoice(
        clinic_, at, twin ? FindingKind::invoiced_twice : FindingKind::invoiced_not_received);
    if (!line.invoiced_on) finding.since = today_;
    finding.quantity = left_over + late;
    finding.ours = pieces.received;
    if (line.unit_cost) finding.money = *line.unit_cost * -finding.quantity;
    finding.evidence.order_lines = pieces.orders;
    if (twin) {
      finding.evidence.invoice_lines.push_back(*twin);
      finding.other = clinic_.invoice_lines[*twin].invoice_ref;
      if (finding.other == line.invoice_ref) finding.cause = Cause::keyed_twice;
    } else {
      finding.cause = cause_of(line, pieces, late > left_over);
      if (finding.cause == Cause::not_recorded) finding.remedy = Remedy::record_receipt;
      if (finding.cause == Cause::other_order) finding.other = order_of(pieces).order_ref;
    }
    return finding;
  }

  [[nodiscard]] bool is_late(const InvoiceLine& line) const {
    return !line.invoiced_on || days_between(*line.invoiced_on, today_) > terms_.delivery_days;
  }

  /// Precondition: some piece was matched.
  [[nodiscard]] const OrderLine& order_of(const InvoicedPieces& pieces) const {
    return clinic_.order_lines[pieces.orders.back()];
  }

  [[nodiscard]] Cause cause_of(const InvoiceLine& line, const InvoicedPieces& pieces,
                               bool on_order) const {
    if (!on_order) return Cause::not_recorded;
    const OrderLine& order = order_of(pieces);
    if (order.order_ref != line.order_ref) return Cause::other_order;
    return order.received_quantity > 0 ? Cause::short_delivery : Cause::still_on_its_way;
  }

  /// Of the lines before it, the last one that is alike.
  [[nodiscard]] std::optional<std::size_t> earlier_alike(std::size_t at) const {
    std::optional<std::size_t> found;
    for (const std::size_t other : lines_.invoices) {
      if (other == at) break;
      if (are_alike(clinic_.invoice_lines[other], clinic_.invoice_lines[at])) found = other;
    }
    return found;
  }

  const Clinic& clinic_;
  const SupplierLines& lines_;
  Date today_;
  const SupplierTerms& terms_;
  std::map<std::size_t, InvoicedPieces> invoiced_;
  std::map<std::size_t, ReceivedPieces> received_;
};

}  // namespace

void find_piece_differences(const Clinic& clinic, const SupplierLines& lines,
                            const std::vector<SupplierPair>& pairs, Date today,
                            const SupplierTerms& terms, std::vector<BillingFinding>& findings) {
  PieceFindings{clinic, lines, pairs, today, terms}.find(findings);
}

}  // namespace sparewell::billing
