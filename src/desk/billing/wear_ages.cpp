#include "desk/billing/wear_ages.hpp"

#include <memory>

#include "desk/assessment.hpp"
#include "wear/exposure.hpp"

namespace sparewell::desk {
namespace {

class Ages {
 public:
  Ages(const Clinic& clinic, Date today) : index_{clinic}, exposures_{clinic, index_, today} {}

  [[nodiscard]] std::optional<double> of(const Unit& unit, const wear::ClinicLife& fitted) const {
    const Item* item = index_.item(unit.item);
    if (item == nullptr) return std::nullopt;
    const auto exposure = exposures_.of(unit, item->kind);
    if (exposure.spans.empty()) return std::nullopt;
    return wear::wear_age(exposure.spans, fitted.kinds.at(item->kind).beta);
  }

 private:
  ClinicIndex index_;
  wear::Exposures exposures_;
};

}  // namespace

WearAges wear_ages_of(const Clinic& clinic, const wear::ClinicLife& fitted, Date today) {
  const auto ages = std::make_shared<const Ages>(clinic, today);
  return [ages, &fitted](const Unit& unit) { return ages->of(unit, fitted); };
}

WearAges wear_ages_of(const Clinic& clinic, Date today) {
  struct Late {
    std::optional<wear::ClinicLife> fitted;
    std::optional<Ages> ages;
  };
  const auto late = std::make_shared<Late>();
  return [&clinic, today, late](const Unit& unit) {
    if (!late->fitted) {
      late->fitted = wear::fit_clinic(clinic, built_in_priors(), today);
      late->ages.emplace(clinic, today);
    }
    return late->ages->of(unit, *late->fitted);
  };
}

}  // namespace sparewell::desk
