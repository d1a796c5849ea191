#include "exchange/x12/paid_claim.hpp"

#include "clinic/say.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

Money money(std::int64_t minor, const PaidEntry& entry) {
  return {minor, entry.row.line.paid.currency};
}

}  // namespace

std::vector<PaidRow> PaidClaim::entries(std::vector<std::string>& differences) const {
  std::vector<PaidRow> made;
  PaidEntry rest = whole;
  for (const auto& line : lines) {
    rest.row.line.charge.minor -= line.row.line.charge.minor;
    rest.row.line.paid.minor -= line.row.line.paid.minor;
    if (const auto left = line.open(); left != 0) {
      differences.push_back(say(
          "Segment {}: of a line of the claim {}, charge less adjustments less paid leaves {}; it "
          "was kept as an adjustment without a reason.",
          line.row.at, excerpt(line.row.line.claim_ref), plain_text(money(left, line))));
    }
    made.push_back(line.balanced());
  }
  if (const auto left = rest.row.line.charge.minor; !lines.empty() && left != 0) {
    differences.push_back(
        say("Segment {}: the charge of the claim {} and those of its lines differ by {}.",
            rest.row.at, excerpt(rest.row.line.claim_ref), plain_text(money(left, rest))));
  }
  if (const auto left = rest.open(); left != 0) {
    differences.push_back(say(
        "Segment {}: charge and payment of the claim {} differ from its lines and adjustments by "
        "{}; it was kept as an adjustment without a reason.",
        rest.row.at, excerpt(rest.row.line.claim_ref), plain_text(money(left, rest))));
  }
  const bool says_nothing =
      rest.row.line.charge.minor == 0 && rest.row.line.paid.minor == 0 && rest.adjustments.empty();
  if (lines.empty() || !says_nothing) made.push_back(rest.balanced());
  return made;
}

}  // namespace sparewell::exchange
