/// Which item follows when a patient leaves one: another size, material or model.
#pragma once

#include <array>
#include <map>
#include <tuple>
#include <unordered_map>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::supply {

/// The endings after which another item of the kind is handed out.
inline constexpr std::array<EndReason, 3> changing_reasons{EndReason::resized, EndReason::reaction,
                                                           EndReason::upgrade};

/// Days after such an ending within which the next item of the kind must have been issued to the
/// patient's side to count as its successor (our choice).
inline constexpr int successor_days = 60;
/// What the rule below weighs, in changes seen (our choice).
inline constexpr double rule_weight = 3;
/// Of two neighbouring sizes the smaller one follows so often (a guess: limbs mostly shrink).
inline constexpr double share_of_smaller = 0.75;

struct Successor {
  ItemCode item;
  double chance = 0;
};

/// Learned from the clinic's own changes, shrunk to a rule: with n changes seen from this item for
/// this reason, c of them to an item that the rule gives the chance q, the chance is
/// (c + rule_weight * q) / (n + rule_weight). A change that no issue followed counts in n once
/// successor_days have passed.
///
/// The rule looks among items of the same kind, attachment and thread. Resized: the next smaller
/// and the next larger size of the same material and supplier, of the same description apart from
/// the size label where there are such. Reaction: items in other materials whose size range
/// overlaps. Upgrade: items whose size range overlaps. Several that fit share by how often they
/// were handed out. Where nothing fits no item is foreseen, and the chances sum to less than 1.
class Successors {
 public:
  /// Refers to the clinic, which is taken as known at the end of `today`.
  Successors(const Clinic& clinic, Date today);

  /// In order of item code; empty for an item that the catalogue does not have, and for any reason
  /// that is not one of changing_reasons.
  [[nodiscard]] std::vector<Successor> of(const ItemCode& item, EndReason reason) const;

 private:
  struct Changes {
    int seen = 0;
    std::map<ItemCode, int> to;
  };
  using Shares = std::map<ItemCode, double>;

  void learn(const Clinic& clinic, Date today);
  [[nodiscard]] Shares rule(const Item& from, EndReason reason) const;
  void add_neighbour(Shares& shares, const Item& from, bool smaller, double share) const;
  /// Adds `share` in all, by how often each was handed out.
  void share_out(Shares& shares, const std::vector<const Item*>& items, double share) const;

  std::unordered_map<ItemCode, const Item*> items_;
  std::map<std::tuple<Kind, Attachment, std::string>, std::vector<const Item*>> alike_;
  std::map<std::pair<ItemCode, EndReason>, Changes> changes_;
  std::unordered_map<ItemCode, int> issued_;
};

}  // namespace sparewell::supply
