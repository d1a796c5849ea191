#include "billing/net_claims.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string>

#include "billing/money_shares.hpp"
#include "billing/scope.hpp"

namespace sparewell::billing {
namespace {

struct Standing {
  std::size_t position;
  const ClaimLine* line;
  int quantity;  ///< what stands
  std::optional<Money> charge;
  bool replaced = false;
};

const std::string& target_of(const ClaimLine& line) {
  return line.replaces.empty() ? line.claim_ref : line.replaces;
}

class Netting {
 public:
  Netting(const Clinic& clinic, std::span<const std::size_t> lines) {
    for (const std::size_t position : lines) {
      const ClaimLine& line = clinic.claim_lines[position];
      if (line.takes_back()) {
        reversals_.push_back(position);
        continue;
      }
      standing_.push_back({position, &line, line.quantity, line.charge});
      if (line.charge) amount_of(*line.charge).charged += line.charge->minor;
    }
    replace();
    for (const std::size_t position : reversals_) reverse(clinic, position);
  }

  NetClaims result() && {
    for (const auto& each : standing_) {
      const bool money = each.charge && each.charge->minor != 0;
      // A line that was billed without charge stands by its pieces; one taken back by pieces but
      // not by its whole amount stands by the rest.
      if (each.quantity > 0 || money) {
        net_.live.push_back({each.position, each.quantity, each.charge});
      }
    }
    return std::move(net_);
  }

 private:
  NetAmounts& amount_of(const Money& money) { return net_.amounts[money.currency]; }

  /// Earlier claims by those that stand in their place; what would replace itself in the end, by
  /// way of others, does not.
  void replace() {
    std::map<std::string, std::string> successor;
    for (const auto& each : standing_) {
      if (each.line->submission != Submission::replacement) continue;
      const std::string& claim = each.line->claim_ref;
      const std::string& target = target_of(*each.line);
      if (target == claim) {
        replaced_by_themselves_.push_back(claim);
        continue;
      }
      std::string last = claim;
      for (auto next = successor.find(last); next != successor.end() && last != target;
           next = successor.find(last)) {
        last = next->second;
      }
      if (last != target) successor.try_emplace(target, claim);
    }
    for (auto& each : standing_) {
      const bool by_own = each.line->submission != Submission::replacement &&
                          std::ranges::find(replaced_by_themselves_, each.line->claim_ref) !=
                              replaced_by_themselves_.end();
      if (!by_own && !successor.contains(each.line->claim_ref)) continue;
      each.replaced = true;
      each.quantity = 0;
      if (!each.charge) continue;
      amount_of(*each.charge).replaced += each.charge->minor;
      each.charge.reset();
    }
  }

  static bool alike(const ClaimLine& reversal, const ClaimLine& line) {
    if (reversal.code != line.code || reversal.service_date != line.service_date) return false;
    return billed_side(reversal) == billed_side(line) &&
           (!reversal.charge || !line.charge || reversal.charge->currency == line.charge->currency);
  }

  /// Lines that the reversal may mean, the likeliest first.
  std::vector<Standing*> candidates(const ClaimLine& reversal) {
    std::vector<Standing*> found;
    const std::string& target = target_of(reversal);
    bool claim_known = !reversal.replaces.empty();
    for (auto& each : standing_) {
      if (each.line->claim_ref != target) continue;
      claim_known = true;
      if (alike(reversal, *each.line)) found.push_back(&each);
    }
    if (!claim_known) {
      for (auto& each : standing_) {
        if (alike(reversal, *each.line) && reversal.charge && each.line->charge &&
            each.line->charge->minor == std::abs(reversal.charge->minor)) {
          found.push_back(&each);
        }
      }
    }
    const int quantity = std::abs(reversal.quantity);
    std::ranges::stable_sort(found, {}, [&](const Standing* each) {
      return std::pair{each->replaced, each->quantity != quantity};
    });
    return found;
  }

  void reverse(const Clinic& clinic, std::size_t position) {
    const ClaimLine& reversal = clinic.claim_lines[position];
    const auto found = candidates(reversal);
    int left = std::abs(reversal.quantity);
    std::optional<std::int64_t> money;
    if (reversal.charge) money = std::abs(reversal.charge->minor);
    if (left == 0 && money && !found.empty() && found.front()->charge) {  // an amount alone
      found.front()->charge->minor -= *money;
      amount_of(*reversal.charge).reversed += *money;
      return;
    }
    std::vector<Standing*> emptied;
    for (Standing* each : found) {
      if (each->replaced) return;  // stood in place of already: nothing is left to take back
      const int taken = std::min(left, each->quantity);
      if (taken == 0) continue;
      take(*each, taken, left, money);
      left -= taken;
      if (each->quantity == 0) emptied.push_back(each);
      if (left == 0) break;
    }
    note_rest(position, reversal, left, money, emptied);
  }

  /// Takes pieces off a line, with their part of what the reversal takes back, else of the charge.
  void take(Standing& line, int taken, int left, std::optional<std::int64_t>& money) {
    if (line.charge) {
      const int parts[] = {taken, money ? left - taken : line.quantity - taken};
      const std::int64_t off = shares(money ? *money : line.charge->minor, parts).front();
      line.charge->minor -= off;
      amount_of(*line.charge).reversed += off;
      if (money) *money -= off;
    }
    line.quantity -= taken;
  }

  void note_rest(std::size_t position, const ClaimLine& reversal, int left,
                 std::optional<std::int64_t> money, const std::vector<Standing*>& emptied) {
    if (left > 0 || (money && *money != 0 && emptied.empty())) {
      LooseReversal loose{position, left, std::nullopt};
      if (money) loose.money = Money{*money, reversal.charge->currency};
      net_.loose.push_back(loose);
      return;
    }
    // All pieces were found, but another amount.
    for (Standing* each : emptied) {
      if (!each->charge || each->charge->minor == 0) continue;
      net_.loose.push_back({position, 0, Money{-each->charge->minor, each->charge->currency}});
    }
  }

  std::vector<Standing> standing_;
  std::vector<std::size_t> reversals_;
  std::vector<std::string> replaced_by_themselves_;
  NetClaims net_;
};

}  // namespace

NetClaims net_claims(const Clinic& clinic, std::span<const std::size_t> lines) {
  return Netting{clinic, lines}.result();
}

}  // namespace sparewell::billing
