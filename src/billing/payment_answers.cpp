#include "billing/payment_answers.hpp"

#include <algorithm>
#include <cstdlib>
#include <span>
#include <tuple>
#include <unordered_map>

#include "billing/claims_in_force.hpp"
#include "billing/finding_list.hpp"

namespace sparewell::billing {
namespace {

using Positions = std::vector<std::size_t>;

/// How well a remittance line fits a claim line; the greater the better, 0 not at all.
struct Fit {
  int points = 0;
  bool exact = false;  ///< nothing differs, or the line's own number is repeated
};

Fit fit_of(const RemittanceLine& paid, const ClaimLine& claimed, bool same_claim) {
  constexpr int by_number = 100;
  constexpr int by_side = 20;
  constexpr int by_day = 10;
  constexpr int by_charge = 5;
  if (!paid.line_control.empty() && paid.line_control == claimed.line_control) {
    return {by_number, true};
  }
  if (paid.code != claimed.code) return {};
  const bool side = paid.side == claimed.side;
  const bool day = paid.service_date == claimed.service_date;
  const bool charge = claimed.charge && claimed.charge->currency == paid.charge.currency &&
                      std::abs(claimed.charge->minor) == std::abs(paid.charge.minor);
  const bool exact = side && day && charge;
  if (!same_claim && !exact) return {};
  // A side that one of the two does not name is no contradiction.
  const bool may_be_side = side || !paid.side || !claimed.side;
  return {1 +
              (side          ? by_side
               : may_be_side ? by_side / 2
                             : 0) +
              (day ? by_day : 0) + (charge ? by_charge : 0),
          exact};
}

class Joining {
 public:
  Joining(const Clinic& clinic, Date today) : clinic_{clinic} {
    made_.standing.resize(clinic.claim_lines.size());
    made_.taken_back.resize(clinic.claim_lines.size());
    made_.claim_line.resize(clinic.remittance_lines.size());
    made_.waits_for_none = claim_lines_settled(clinic);
    order_claims(today);
    order_payments(today);
  }

  PaymentAnswers run() && {
    for (std::size_t begin = 0; begin < lines_.size();) {
      std::size_t end = begin;
      while (end < lines_.size() && same_payment(lines_[begin], lines_[end])) ++end;
      answer(std::span{lines_}.subspan(begin, end - begin));
      begin = end;
    }
    return std::move(made_);
  }

 private:
  [[nodiscard]] const RemittanceLine& paid(std::size_t at) const {
    return clinic_.remittance_lines[at];
  }
  [[nodiscard]] const ClaimLine& claimed(std::size_t at) const { return clinic_.claim_lines[at]; }

  void order_claims(Date today) {
    Positions all;
    for (std::size_t i = 0; i < clinic_.claim_lines.size(); ++i) {
      if (claimed(i).service_date <= today && !claimed(i).takes_back()) all.push_back(i);
    }
    std::vector<std::string> keys(clinic_.claim_lines.size());
    for (const auto i : all) keys[i] = line_key(claimed(i));
    std::ranges::sort(all, [&](std::size_t a, std::size_t b) { return keys[a] < keys[b]; });
    for (const auto i : all) {
      const auto& line = claimed(i);
      by_claim_[line.claim_ref].push_back(i);
      if (!line.line_control.empty()) by_number_[line.line_control].push_back(i);
      by_patient_[line.patient.text + '\x1F' + line.code].push_back(i);
    }
  }

  void order_payments(Date today) {
    std::map<std::pair<std::string, std::string>, Date> days;
    for (const auto& each : clinic_.remittances) days[{each.payer, each.reference}] = each.paid_on;
    paid_on_.resize(clinic_.remittance_lines.size());
    for (std::size_t i = 0; i < clinic_.remittance_lines.size(); ++i) {
      const auto day = days.find({paid(i).payer, paid(i).reference});
      if (day == days.end() || day->second > today) continue;
      paid_on_[i] = day->second;
      if (paid(i).entry != RemittanceEntry::provider) lines_.push_back(i);
    }
    // Within a payment a claim is first taken back and then paid anew.
    const auto place = [&](std::size_t i) {
      const auto& line = paid(i);
      return std::tuple{paid_on_[i], std::string_view{line.payer}, std::string_view{line.reference},
                        !takes_back(line), line.position};
    };
    std::ranges::sort(lines_, [&](auto a, auto b) { return place(a) < place(b); });
  }

  [[nodiscard]] bool same_payment(std::size_t a, std::size_t b) const {
    return paid(a).payer == paid(b).payer && paid(a).reference == paid(b).reference;
  }

  /// What fits exactly goes first, so that it is not taken by what fits a little.
  void answer(std::span<const std::size_t> payment) {
    for (const bool exactly : {true, false}) {
      for (const auto at : payment) {
        if (paid(at).entry == RemittanceEntry::claim) {
          if (!exactly) answer_claim(at);
        } else if (!made_.claim_line[at]) {
          answer_line(at, exactly);
        }
      }
    }
  }

  void answer_claim(std::size_t at) {
    const auto& line = paid(at);
    if (!by_claim_.contains(line.claim_ref)) {
      // What belongs to lines of the same claim stands with them.
      if (line.charge.minor != 0 || line.paid.minor != 0) made_.without_claim.push_back(at);
      return;
    }
    auto& standing = made_.of_claim[line.claim_ref];
    if (takes_back(line)) {
      const auto last = std::ranges::find_if(
          standing, [&](std::size_t i) { return paid(i).paid.minor == -line.paid.minor; });
      if (last != standing.end()) {
        standing.erase(last);
        return;
      }
    }
    standing.push_back(at);
  }

  void answer_line(std::size_t at, bool exactly) {
    const auto& line = paid(at);
    const bool reverses = takes_back(line);
    std::optional<std::size_t> best;
    std::tuple<int, int> best_rank;
    for (const auto i : candidates(line)) {
      const auto fit = fit_of(line, claimed(i), claimed(i).claim_ref == line.claim_ref);
      if (fit.points == 0 || (exactly && !fit.exact)) continue;
      const std::tuple rank{reverses ? has_answer_of(line, i) : room_for(at, i), fit.points};
      if (best && rank <= best_rank) continue;
      best = i;
      best_rank = rank;
    }
    if (!best) {
      if (!exactly) made_.without_claim.push_back(at);
    } else if (std::get<0>(best_rank) > 0) {
      reverses ? reverse(at, *best) : stand(at, *best);
    } else if (!exactly) {
      made_.claim_line[at] = best;
      (reverses ? made_.without_claim : made_.paid_again).push_back(at);
    }
  }

  [[nodiscard]] Positions candidates(const RemittanceLine& line) const {
    Positions found;
    const auto take = [&](const auto& index, const std::string& key, bool alone) {
      const auto there = index.find(key);
      if (there == index.end() || (alone && there->second.size() != 1)) return;
      found.insert(found.end(), there->second.begin(), there->second.end());
    };
    if (!line.claim_ref.empty()) take(by_claim_, line.claim_ref, false);
    if (!found.empty()) return found;
    if (!line.line_control.empty()) take(by_number_, line.line_control, true);
    if (found.empty() && !line.patient.empty()) {
      take(by_patient_, line.patient.text + '\x1F' + line.code, false);
    }
    return found;
  }

  [[nodiscard]] int has_answer_of(const RemittanceLine& reversal, std::size_t claim_line) const {
    return std::ranges::any_of(made_.standing[claim_line],
                               [&](std::size_t i) { return paid(i).payer == reversal.payer; })
               ? 1
               : 0;
  }

  /// 0 when the payer has paid the claim line already; otherwise the more the likelier it is meant.
  [[nodiscard]] int room_for(std::size_t at, std::size_t claim_line) const {
    const auto& line = paid(at);
    bool denied_before = false;
    std::int64_t charged = 0;
    bool paid_before = false;
    bool same_payment_only = true;
    for (const auto i : made_.standing[claim_line]) {
      if (paid(i).payer != line.payer) continue;
      charged += paid(i).charge.minor;
      same_payment_only = same_payment_only && paid(i).reference == line.reference;
      (is_denial(paid(i)) ? denied_before : paid_before) = true;
    }
    if (paid_before) {
      // Part of a line that the payer split, or the denial of what was sent once more.
      const auto& charge = claimed(claim_line).charge;
      const bool part = same_payment_only && charge && charge->currency == line.charge.currency &&
                        charged + line.charge.minor <= charge->minor;
      return part || is_denial(line) ? 1 : 0;
    }
    if (made_.waits_for_none[claim_line]) return 2;
    return denied_before ? 3 : 4;
  }

  static bool is_denial(const RemittanceLine& line) {
    return line.status == "4" || line.paid.minor == 0;
  }

  void stand(std::size_t at, std::size_t claim_line) {
    auto& standing = made_.standing[claim_line];
    made_.claim_line[at] = claim_line;
    const auto of_payer = [&](std::size_t i) { return paid(i).payer == paid(at).payer; };
    const bool paid_before = std::ranges::any_of(
        standing, [&](std::size_t i) { return of_payer(i) && !is_denial(paid(i)); });
    if (paid_before && is_denial(paid(at)) &&
        paid(at).reference != paid(standing.back()).reference) {
      return;  // what was paid stands; the denial is about sending it once more
    }
    // A later word of the payer stands in place of its denial.
    std::erase_if(standing, [&](std::size_t i) {
      return of_payer(i) && is_denial(paid(i)) && paid(i).reference != paid(at).reference;
    });
    standing.push_back(at);
  }

  void reverse(std::size_t at, std::size_t claim_line) {
    made_.claim_line[at] = claim_line;
    auto& standing = made_.standing[claim_line];
    const auto amount = paid(at).paid.minor;
    const auto of_payer = [&](std::size_t i) { return paid(i).payer == paid(at).payer; };
    auto taken = std::ranges::find_if(
        standing, [&](std::size_t i) { return of_payer(i) && paid(i).paid.minor == -amount; });
    if (taken == standing.end()) taken = std::ranges::find_if(standing, of_payer);
    made_.taken_back[claim_line].push_back(*taken);
    made_.taken_back[claim_line].push_back(at);
    standing.erase(taken);
  }

  const Clinic& clinic_;
  PaymentAnswers made_;
  std::unordered_map<std::string, Positions> by_claim_;
  std::unordered_map<std::string, Positions> by_number_;
  std::unordered_map<std::string, Positions> by_patient_;
  Positions lines_;
  std::vector<Date> paid_on_;
};

}  // namespace

bool takes_back(const RemittanceLine& line) {
  return line.status == "22" || (line.charge.minor < 0 && line.paid.minor <= 0);
}

std::string payer_of(const ClaimLine& line, const ClinicIndex& index) {
  if (!line.payer.empty()) return line.payer;
  const auto* patient = index.patient(line.patient);
  return patient == nullptr ? std::string{} : patient->payer;
}

PaymentAnswers join_payments(const Clinic& clinic, Date today) {
  return Joining{clinic, today}.run();
}

}  // namespace sparewell::billing
