/// Prints how forecasts do on the simulated clinics: one row a law, or with --kinds one a kind.
/// laws_report [--kinds] [--fits] [--few] [SEEDS [PATIENTS [LAW]]]

#include <cmath>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "desk/assessment.hpp"
#include "simulated/laws.hpp"
#include "simulated/scoring.hpp"
#include "simulated/simulate.hpp"

namespace {

using namespace sparewell;
using namespace sparewell::simulated;

struct Wanted {
  int seeds = 8;
  int patients = 300;
  std::string law;  ///< empty: all
  bool kinds = false;
  bool fits = false;
};

/// Each parameter's fitted value less its true one, in logs where it is positive, over the seeds.
class FitErrors {
 public:
  void add(const KindLaw& law, const wear::KindLife& fitted) {
    add(law.kind, "log shape", std::log(fitted.shape / law.shape));
    for (const auto& [material, scale] : law.scale_days) {
      add(law.kind, fmt::format("log scale {}", word(material)),
          std::log(wear::scale_days(fitted, material) / scale));
    }
    for (std::size_t f = 0; f < wear::factor_count; ++f) {
      add(law.kind, fmt::format("beta {}", wear::factor_name(static_cast<wear::Factor>(f))),
          fitted.beta[f] - law.beta[f]);
    }
    add(law.kind, "theta", fitted.theta - law.theta);
    add(law.kind, "theta, true", law.theta);
    add(law.kind, "wear endings (number)", fitted.wear_endings);
  }

  void print() const {
    for (const auto& [key, sums] : sums_) {
      const double n = sums.count;
      const double mean = sums.sum / n;
      fmt::print("    {:<7} {:<26} {:9.3f}, varying by {:.3f}\n", word(key.first), key.second, mean,
                 std::sqrt(std::max(0.0, sums.squares / n - mean * mean)));
    }
  }

 private:
  struct Sums {
    double count = 0;
    double sum = 0;
    double squares = 0;
  };
  void add(Kind kind, const std::string& what, double error) {
    Sums& sums = sums_[{kind, what}];
    ++sums.count;
    sums.sum += error;
    sums.squares += error * error;
  }
  std::map<std::pair<Kind, std::string>, Sums> sums_;
};

void print_head() {
  fmt::print(
      "{:<18} {:>6} | {:>11} {:>11} {:>5} | {:>5} {:>5} | {:>5} {:>5} | {:>5} {:>5} | {:>7} | "
      "{:>12} {:>7} {:>7}\n",
      "law", "units", "80 %", "50 %", "95 %", "sm80", "sm50", "or80", "or50", "wid80", "/or",
      "pinball", "/oracle", "/sighted", "/calend");
}

void print_row(const std::string& name, const std::vector<ScoredUnit>& units) {
  if (units.empty()) return;
  const auto percent = [&](Peer peer, double UnitScore::*score) {
    return 100 * mean_of(units, peer, score).value;
  };
  const Measured in_80 = mean_of(units, Peer::ours, &UnitScore::in_80);
  const Measured in_half = mean_of(units, Peer::ours, &UnitScore::in_half);
  const double width = mean_of(units, Peer::ours, &UnitScore::width_80).value;
  const Measured to_oracle = pinball_ratio(units, Peer::ours, Peer::oracle);
  fmt::print(
      "{:<18} {:>6} | {:5.1f} ({:3.1f}) {:5.1f} ({:3.1f}) {:5.1f} | {:5.1f} {:5.1f} | {:5.1f} "
      "{:5.1f} | {:5.0f} {:5.2f} | {:7.1f} | {:6.3f}({:.3f}) {:7.3f} {:7.3f}\n",
      name, units.size(), 100 * in_80.value, 100 * in_80.error, 100 * in_half.value,
      100 * in_half.error, percent(Peer::ours, &UnitScore::in_95),
      percent(Peer::ours, &UnitScore::smooth_80), percent(Peer::ours, &UnitScore::smooth_half),
      percent(Peer::oracle, &UnitScore::smooth_80), percent(Peer::oracle, &UnitScore::smooth_half),
      width, width / mean_of(units, Peer::oracle, &UnitScore::width_80).value,
      mean_of(units, Peer::ours, &UnitScore::pinball).value, to_oracle.value, to_oracle.error,
      pinball_ratio(units, Peer::ours, Peer::sighted_oracle).value,
      pinball_ratio(units, Peer::ours, Peer::calendar).value);
}

template <class LawOfSeed>
void report(const Wanted& wanted, int seeds, int patients, const LawOfSeed& law_of_seed) {
  const std::string name = law_of_seed(1).name;
  if (!wanted.law.empty() && name != wanted.law) return;
  std::vector<ScoredUnit> all;
  FitErrors errors;
  for (int i = 1; i <= seeds; ++i) {
    const auto seed = static_cast<std::uint64_t>(i);
    const ClinicLaw law = law_of_seed(seed);
    const SimulatedClinic made = simulate(law, patients, make_date(2026, 6, 1), seed);
    wear::ClinicLife fitted;
    const auto scored = score(made, law, desk::built_in_priors(), seed, &fitted);
    all.insert(all.end(), scored.begin(), scored.end());
    for (const KindLaw& kind : law.kinds) errors.add(kind, fitted.kinds.at(kind.kind));
  }
  print_row(fmt::format("{} {}", name, patients), all);
  if (wanted.kinds) {
    for (const KindLaw& kind : law_of_seed(1).kinds) {
      std::vector<ScoredUnit> of_kind;
      for (const ScoredUnit& unit : all) {
        if (unit.kind == kind.kind) of_kind.push_back(unit);
      }
      print_row(fmt::format("  {}", word(kind.kind)), of_kind);
    }
  }
  if (wanted.fits) errors.print();
  std::fflush(stdout);
}

Wanted read(int argc, char** argv) {
  Wanted wanted;
  std::vector<std::string> plain;
  for (int i = 1; i < argc; ++i) {
    const std::string text = argv[i];
    if (text == "--kinds") {
      wanted.kinds = true;
    } else if (text == "--fits") {
      wanted.fits = true;
    } else {
      plain.push_back(text);
    }
  }
  if (!plain.empty()) wanted.seeds = std::max(1, std::atoi(plain[0].c_str()));
  if (plain.size() > 1) wanted.patients = std::max(1, std::atoi(plain[1].c_str()));
  if (plain.size() > 2) wanted.law = plain[2];
  return wanted;
}

}  // namespace

int main(int argc, char** argv) {
  const Wanted wanted = read(argc, argv);
  print_head();
  for (const auto law : {ordinary, no_frailty, strong_frailty, wrong_factors, changed_jobs,
                         frequent_other_endings, item_effects, left_truncation, far_from_priors}) {
    report(wanted, wanted.seeds, wanted.patients, [&](std::uint64_t) { return law(); });
  }
  const auto drawn = [](std::uint64_t seed) { return drawn_from(desk::built_in_priors(), seed); };
  report(wanted, wanted.seeds, wanted.patients, drawn);
  report(wanted, wanted.seeds, wanted.patients, [](std::uint64_t) { return few_data(); });
  const int few = 20;
  const int more_seeds = wanted.seeds * std::max(1, wanted.patients / few);
  report(wanted, more_seeds, few, [](std::uint64_t) { return few_data(); });
  report(wanted, more_seeds, few, drawn);
  return 0;
}
