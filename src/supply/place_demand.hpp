/// Demand for items place by place: what the patients of each branch will need.
#pragma once

#include <memory>
#include <vector>

#include "clinic/branches.hpp"
#include "supply/clinic_demand.hpp"
#include "supply/proposal.hpp"

namespace sparewell::supply {

/// What the branches' shares of patients with parts in use weigh, in sides fitted first, where the
/// share of those who begin is learned (our choice).
inline constexpr double patients_weight = 3;

/// The part of a clinic's new starts that each branch has, by position in Branches::names(); they
/// sum to 1. With n sides fitted first in the last starts_counted_days, n_p of them of patients who
/// belong to p, and u_p the share of p of the patients with parts in use, it is
/// (n_p + patients_weight * u_p) / (n + patients_weight).
[[nodiscard]] std::vector<double> shares_of_starts(const Clinic& clinic, const Branches& branches,
                                                   const std::vector<wear::LifeOfUnit>& lives,
                                                   Date today);

/// Demand at each place: of the units in use of patients who belong there, of the changes to the
/// item from units there, and of the place's share of new starts. Which item follows which, how
/// often patients begin and how the year runs are learned from the whole clinic.
///
/// Starts with an item come at a rate that is Gamma(a, b). With shares p_i that are themselves
/// uncertain as Dirichlet(a p_1, ..., a p_n) the rates of the places are independent
/// Gamma(a p_i, b) (from memory), so that what the places need sums to what the clinic needs, in
/// means and as whole distributions.
///
/// Refers to the clinic and to `lives`, which must outlive it. Threads may share it.
class PlaceDemand {
 public:
  /// `lives` of the units in use at the end of `today`.
  PlaceDemand(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today);

  [[nodiscard]] Date today() const { return today_; }
  [[nodiscard]] const Branches& branches() const { return branches_; }
  /// The units of the item that are in use by patients of the place.
  [[nodiscard]] const Lives& users(const ItemCode& item, std::size_t place) const;
  /// Demand for the item at the place; one for each thread.
  [[nodiscard]] ItemDemand of(const Item& item, std::size_t place) const;
  /// The same of only these of its users, which must outlive it: what the others need is certain
  /// and counted elsewhere (booked.hpp).
  [[nodiscard]] ItemDemand of(const Item& item, std::size_t place, const Lives& users) const;

 private:
  struct OfPlace {
    std::vector<wear::LifeOfUnit> lives;  ///< empty where there is one place: it has them all
    std::optional<ClinicDemand> demand;   ///< always there once constructed
  };

  const Clinic* clinic_;
  Date today_;
  Branches branches_;
  std::vector<double> shares_;
  std::vector<std::unique_ptr<OfPlace>> places_;
};

/// Adds to each stocked line how much of its expected demand is at which place; nothing where the
/// clinic has one place. The means of the places add up to Reason::expected_demand.
void tell_places(std::vector<ProposalLine>& lines, const Clinic& clinic, const PlaceDemand& demand);

}  // namespace sparewell::supply
