/// What is left of charges and payments after the cost of the pieces, by item and payer.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "billing/payment_answers.hpp"
#include "billing/reconcile_claims.hpp"

namespace sparewell::billing {

/// Whether a margin can be said.
enum class MarginState {
  known,
  no_cost,        ///< the cost of the pieces is not known
  no_charge,      ///< they were billed without a charge
  other_currency  ///< they cost another currency than they were billed in
};

/// Pieces of one item that were billed to one payer, of which as much is known.
struct Margin {
  ItemCode item;
  std::string payer;
  MarginState state = MarginState::known;
  std::optional<Currency> currency;  ///< of the charge; empty without one
  int pieces = 0;
  std::optional<Money> charge;
  std::optional<Money> cost;  ///< in its own currency
  int pieces_answered = 0;    ///< of which a payer has answered the claim
  std::optional<Money> paid;  ///< for these
  std::optional<Money> cost_of_answered;

  /// Nullopt unless both sides are known in one currency.
  [[nodiscard]] std::optional<Money> of_charge() const;
  [[nodiscard]] std::optional<Money> of_paid() const;
};

/// Of the pieces that are both handed out and billed. A piece costs what the last order that came
/// before its issue cost, else what the catalogue says today (careful where prices have fallen). A
/// line's payment is shared out over its pieces like its charge, to the cent; what a payer says of
/// a claim as a whole belongs to no piece. By item, payer, state and currency.
[[nodiscard]] std::vector<Margin> margins(const Clinic& clinic, std::span<const PairedPieces> pairs,
                                          const PaymentAnswers& answers);

}  // namespace sparewell::billing
