#include "care/alternatives.hpp"

#include <algorithm>
#include <limits>
#include <tuple>

namespace sparewell::care {
namespace {

constexpr double days_in_year = 365.25;

/// What has to be asked about the verdict: 0 nothing.
int doubt(const SensitivityVerdict& verdict) {
  if (verdict.verdict >= Verdict::none_known) return 0;
  if (verdict.decided) return 1;
  return verdict.verdict == Verdict::not_declared ? 2 : 3;
}

int doubt(const FitCheck& fit) {
  if (fit.fit == Fit::no_size) return 0;
  if (fit.fit == Fit::not_known) return 2;
  if (fit.fit == Fit::edge_smaller || fit.fit == Fit::edge_larger) return 2;
  return fit.old ? 1 : 0;
}

int doubt(const std::vector<AttachmentFinding>& found) {
  return static_cast<int>(std::ranges::count_if(found, [](const AttachmentFinding& each) {
    return gravity(each.mismatch) == Gravity::ask;
  }));
}

double cost_of(const Alternative& each) {
  if (!each.item->unit_cost) return std::numeric_limits<double>::max();
  const double price = each.item->unit_cost->major();
  const auto& lasts = each.supply.expected_days;
  return lasts && *lasts > 0 ? price * days_in_year / *lasts : price;
}

auto rank(const Alternative& each, const Currency& home) {
  const bool foreign = each.item->unit_cost && each.item->unit_cost->currency != home;
  return std::tuple{doubt(each.verdict),
                    doubt(each.fit),
                    doubt(each.attachment) + static_cast<int>(each.missing.size()),
                    each.supply.on_hand > 0 ? 0 : 1,
                    foreign,
                    cost_of(each),
                    -each.supply.expected_days.value_or(0),
                    each.item->code};
}

class Chooser {
 public:
  Chooser(const Clinic& clinic, const Wanted& wanted, const ChainRules& rules,
          const SubstanceTable& substances, const SupplyOfItem& supply)
      : clinic_{clinic},
        wanted_{wanted},
        rules_{rules},
        substances_{substances},
        supply_{supply},
        stays_{worn_on(clinic, ClinicIndex{clinic}, wanted.patient, wanted.side, wanted.day)} {
    // What it takes the place of is not worn any more.
    std::erase(stays_.items, wanted.instead_of);
  }

  Alternatives found() {
    for (const Item& item : clinic_.items) {
      if (does_the_work(item)) consider(item);
    }
    std::ranges::sort(made_.found, {}, [&](const Alternative& each) {
      return rank(each, clinic_.settings.currency);
    });
    return std::move(made_);
  }

 private:
  [[nodiscard]] bool does_the_work(const Item& item) const {
    const auto functions = rules_.functions_of(item);
    if (wanted_.instead_of == nullptr) {
      return std::ranges::find(functions, wanted_.function) != functions.end();
    }
    if (item.code == wanted_.instead_of->code || item.kind != wanted_.instead_of->kind) return false;
    return functions == rules_.functions_of(*wanted_.instead_of);
  }

  void consider(const Item& item) {
    Alternative made;
    made.item = &item;
    made.verdict = check_sensitivities(item, wanted_.patient, clinic_.sensitivities, substances_,
                                       clinic_.decisions, wanted_.day)
                       .front();
    if (made.verdict.verdict == Verdict::conflict && !made.verdict.decided) {
      ++made_.left_out.conflict;
      return;
    }
    made.fit = check_fit(item, wanted_.patient, wanted_.side, clinic_.measurements, wanted_.day);
    if (made.fit.fit == Fit::limb_smaller || made.fit.fit == Fit::limb_larger) {
      ++made_.left_out.size;
      return;
    }
    made.attachment = check_attachment(rules_, item, stays_);
    for (const AttachmentFinding& each : made.attachment) {
      if (each.mismatch == Mismatch::thread_differs) {
        ++made_.left_out.thread;
        return;
      }
      if (each.mismatch == Mismatch::liner_not_for_this ||
          each.mismatch == Mismatch::not_in_suspension) {
        ++made_.left_out.suspension;
        return;
      }
    }
    made.missing = missing_after(rules_, item, stays_);
    made.supply = supply_(item);
    made_.found.push_back(std::move(made));
  }

  const Clinic& clinic_;
  const Wanted& wanted_;
  const ChainRules& rules_;
  const SubstanceTable& substances_;
  const SupplyOfItem& supply_;
  Worn stays_;
  Alternatives made_;
};

}  // namespace

Alternatives alternatives(const Clinic& clinic, const Wanted& wanted, const ChainRules& rules,
                          const SubstanceTable& substances, const SupplyOfItem& supply) {
  return Chooser{clinic, wanted, rules, substances, supply}.found();
}

}  // namespace sparewell::care
