#include "wear/clinic_fit.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <unordered_map>

#include "clinic/in_parallel.hpp"
#include "wear/exposure.hpp"
#include "wear/kind_fit.hpp"
#include "wear/records_begin.hpp"

namespace sparewell::wear {
namespace {

constexpr std::size_t kind_count = 7;
static_assert(static_cast<std::size_t>(Kind::sock) + 1 == kind_count);

/// Items of one kind that were ever handed out, and materials in the catalogue.
struct ItemsOfKind {
  std::set<ItemCode> worn;
  std::vector<Material> materials;
};

/// The data of one kind while they are gathered.
struct Gathering {
  KindData data;
  std::unordered_map<PatientRef, std::size_t> groups;
};

std::vector<ItemsOfKind> items_by_kind(const Clinic& clinic, const ClinicIndex& index, Date today) {
  std::vector<ItemsOfKind> all(kind_count);
  for (const Item& item : clinic.items) {
    all[static_cast<std::size_t>(item.kind)].materials.push_back(item.material);
  }
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (item != nullptr && unit.issued_on <= today) {
      all[static_cast<std::size_t>(item->kind)].worn.insert(item->code);
    }
  }
  return all;
}

Gathering empty_data(const PriorTable& priors, Kind kind, const ItemsOfKind& items,
                     const ClinicIndex& index) {
  KindPrior prior = kind_prior(priors, kind, items.materials);
  std::vector<Eigen::Index> material_of;
  for (const ItemCode& code : items.worn) {
    const auto found = std::ranges::lower_bound(prior.materials, index.item(code)->material);
    material_of.push_back(std::distance(prior.materials.begin(), found));
  }
  const LifeLikelihood none{items.worn.size(), factor_count, Grouping::shared_multiplier};
  return {{std::move(prior), {items.worn.begin(), items.worn.end()}, std::move(material_of), none},
          {}};
}

/// Spans as the likelihood takes them.
struct FlatSpans {
  std::vector<double> log_days;
  std::vector<double> factors;

  explicit FlatSpans(const std::vector<WearSpan>& spans) {
    for (const WearSpan& span : spans) {
      log_days.push_back(std::log(span.days));
      factors.insert(factors.end(), span.factors.begin(), span.factors.end());
    }
  }
};

void add_exposure(const Exposure& exposure, const Unit& unit, Gathering& into) {
  if (exposure.spans.empty()) return;  // never worn: says nothing about wear
  const FlatSpans life{exposure.spans};
  const FlatSpans entry{exposure.before_entry};
  const auto item = std::ranges::lower_bound(into.data.items, unit.item);
  const std::size_t group =
      into.groups.try_emplace(unit.patient, into.groups.size()).first->second;
  into.data.likelihood.add({static_cast<std::size_t>(item - into.data.items.begin()),
                            exposure.worn_out, life.log_days, life.factors, exposure.at_end, group,
                            entry.log_days, entry.factors});
}

std::vector<Gathering> gather(const Clinic& clinic, const PriorTable& priors, Date today,
                              std::optional<Date> records_begin) {
  const ClinicIndex index{clinic};
  const Exposures exposures{clinic, index, today, records_begin};
  const auto items = items_by_kind(clinic, index, today);
  std::vector<Gathering> all;
  for (std::size_t i = 0; i < kind_count; ++i) {
    all.push_back(empty_data(priors, static_cast<Kind>(i), items[i], index));
  }
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (!item || unit.issued_on > today) continue;
    add_exposure(exposures.of(unit, item->kind), unit, all[static_cast<std::size_t>(item->kind)]);
  }
  return all;
}

ClinicLife fit_from(const Clinic& clinic, const PriorTable& priors, Date today,
                    std::optional<Date> records_begin) {
  ClinicLife fitted;
  fitted.records_begin = records_begin;
  fitted.others = other_endings(clinic, priors, today, records_begin);
  const auto gathered = gather(clinic, priors, today, records_begin);
  std::vector<KindLife> lives(gathered.size());
  in_parallel(gathered.size(), [&](std::size_t i) { lives[i] = fit_kind(gathered[i].data); });
  for (KindLife& life : lives) fitted.kinds.emplace(life.kind, std::move(life));
  return fitted;
}

}  // namespace

ClinicLife fit_clinic(const Clinic& clinic, const PriorTable& priors, Date today) {
  if (clinic.settings.records_begin) {
    // The day itself is recorded, so they begin at the end of the day before.
    return fit_from(clinic, priors, today, *clinic.settings.records_begin - days{1});
  }
  ClinicLife fitted = fit_from(clinic, priors, today, std::nullopt);
  const auto begin = suspected_records_begin(clinic, fitted, today);
  return begin ? fit_from(clinic, priors, today, begin) : fitted;
}

}  // namespace sparewell::wear
