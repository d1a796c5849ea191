#include "billing/finding.hpp"

#include <algorithm>
#include <array>
#include <tuple>

namespace sparewell::billing {

Book book_of(FindingKind kind) {
  if (kind <= FindingKind::no_proof_of_delivery) return Book::claims;
  return kind <= FindingKind::paid_without_claim ? Book::payments : Book::suppliers;
}

void sort_findings(std::vector<BillingFinding>& findings) {
  const auto place = [](const BillingFinding& f) {
    return std::tie(f.kind, f.patient, f.supplier, f.since, f.key);
  };
  std::ranges::sort(findings, [&](const auto& a, const auto& b) { return place(a) < place(b); });
}

std::string_view finding_word(FindingKind kind) {
  static constexpr std::array<std::string_view, 25> list{"issued, not billed",
                                                         "billed, not issued",
                                                         "wrong side",
                                                         "wrong quantity",
                                                         "wrong code",
                                                         "wrong date",
                                                         "billed twice",
                                                         "no charge",
                                                         "code not valid",
                                                         "reversal without claim",
                                                         "over the limit",
                                                         "replaced early, no reason",
                                                         "paper missing",
                                                         "no proof of delivery",
                                                         "not answered",
                                                         "denied",
                                                         "paid differently",
                                                         "paid without claim",
                                                         "received, not invoiced",
                                                         "invoiced, not received",
                                                         "price differs",
                                                         "freight differs",
                                                         "invoiced twice",
                                                         "credit due",
                                                         "warranty credit due"};
  return list[static_cast<std::size_t>(kind)];
}

}  // namespace sparewell::billing
