#include "billing/finding.hpp"

#include <algorithm>
#include <array>
#include <tuple>

#include "clinic/say.hpp"

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
  static constexpr std::array<std::string_view, 25> list{to_say("issued, not billed"),
                                                         to_say("billed, not issued"),
                                                         to_say("wrong side"),
                                                         to_say("wrong quantity"),
                                                         to_say("wrong code"),
                                                         to_say("wrong date"),
                                                         to_say("billed twice"),
                                                         to_say("no charge"),
                                                         to_say("code not valid"),
                                                         to_say("reversal without claim"),
                                                         to_say("over the limit"),
                                                         to_say("replaced early, no reason"),
                                                         to_say("paper missing"),
                                                         to_say("no proof of delivery"),
                                                         to_say("not answered"),
                                                         to_say("denied"),
                                                         to_say("paid differently"),
                                                         to_say("paid without claim"),
                                                         to_say("received, not invoiced"),
                                                         to_say("invoiced, not received"),
                                                         to_say("price differs"),
                                                         to_say("freight differs"),
                                                         to_say("invoiced twice"),
                                                         to_say("credit due"),
                                                         to_say("warranty credit due")};
  return list[static_cast<std::size_t>(kind)];
}

}  // namespace sparewell::billing
