#include "billing/claims_in_force.hpp"

#include <algorithm>
#include <cstdlib>
#include <string>
#include <tuple>
#include <unordered_map>

#include "billing/payment_answers.hpp"

namespace sparewell::billing {
namespace {

const std::string& meant_claim(const ClaimLine& line) {
  return line.replaces.empty() ? line.claim_ref : line.replaces;
}

/// Of the lines of a claim, those that a replacement with the same reference is not itself one of.
bool is_replaced_by(const ClaimLine& line, const ClaimLine& replacement) {
  return line.claim_ref != replacement.claim_ref || line.submission == Submission::original;
}

bool is_taken_back_by(const ClaimLine& line, const ClaimLine& reversal) {
  return !line.takes_back() && line.code == reversal.code && line.side == reversal.side &&
         line.service_date == reversal.service_date;
}

}  // namespace

std::vector<bool> claim_lines_settled(const Clinic& clinic) {
  const auto& lines = clinic.claim_lines;
  std::vector<bool> settled(lines.size(), false);
  std::unordered_map<std::string, std::vector<std::size_t>> by_claim;
  std::vector<std::size_t> later;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    by_claim[lines[i].claim_ref].push_back(i);
    settled[i] = lines[i].takes_back();
    if (settled[i] || lines[i].submission == Submission::replacement) later.push_back(i);
  }
  std::ranges::sort(later, {}, [&](std::size_t i) {
    return std::tuple{!lines[i].takes_back(), claim_line_key(lines[i])};
  });
  for (const auto i : later) {
    const auto claim = by_claim.find(meant_claim(lines[i]));
    if (claim == by_claim.end()) continue;
    if (!lines[i].takes_back()) {
      for (const auto other : claim->second) {
        if (is_replaced_by(lines[other], lines[i])) settled[other] = true;
      }
      continue;
    }
    const std::size_t* best = nullptr;
    const auto place = [&](std::size_t other) {
      return std::tuple{std::abs(lines[other].quantity) != std::abs(lines[i].quantity),
                        claim_line_key(lines[other])};
    };
    for (const auto& other : claim->second) {
      if (settled[other] || !is_taken_back_by(lines[other], lines[i])) continue;
      if (best == nullptr || place(other) < place(*best)) best = &other;
    }
    if (best != nullptr) settled[*best] = true;
  }
  return settled;
}

}  // namespace sparewell::billing
