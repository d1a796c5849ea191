// How long a full proposal takes from the clinic file, stage by stage.
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <string_view>
#include <unordered_map>

#include <fmt/format.h>

#include "bench/proposal_peers.hpp"
#include "desk/assessment.hpp"
#include "store/open.hpp"
#include "supply/proposal.hpp"

namespace {

using namespace sparewell;

class Stages {
 public:
  void ended(const char* what) {
    const auto now = std::chrono::steady_clock::now();
    fmt::print("  {:<28} {:7.3f} s\n", what, std::chrono::duration<double>(now - last_).count());
    last_ = now;
  }

  /// What was done since the last stage does not count.
  void leave_out() {
    const auto now = std::chrono::steady_clock::now();
    first_ += now - last_;
    last_ = now;
  }

  [[nodiscard]] double total() const {
    return std::chrono::duration<double>(last_ - first_).count();
  }

 private:
  std::chrono::steady_clock::time_point first_ = std::chrono::steady_clock::now();
  std::chrono::steady_clock::time_point last_ = first_;
};

std::unique_ptr<store::Store> open(const char* file) {
  return store::open_clinic_file(file, store::OpenMode::existing,
                                 [] { return std::chrono::system_clock::now(); });
}

struct Assessed {
  Clinic clinic;
  std::vector<wear::LifeOfUnit> lives;
  double seconds = 0;
};

/// The clinic with each item in as many models as make at least `items` of them, patients shared
/// out among the models.
Clinic widened(Clinic clinic, std::size_t items) {
  const std::size_t known = clinic.items.size();
  const std::size_t models = (items + known - 1) / std::max<std::size_t>(known, 1);
  const auto named = [](const ItemCode& code, std::size_t model) {
    return model == 0 ? code : ItemCode{fmt::format("{}/{}", code.text, model)};
  };
  for (std::size_t model = 1; model < models; ++model) {
    for (std::size_t i = 0; i < known; ++i) {
      Item item = clinic.items[i];
      item.code = named(item.code, model);
      clinic.items.push_back(std::move(item));
    }
  }
  std::unordered_map<PatientRef, std::size_t> model_of;
  for (Unit& unit : clinic.units) {
    const auto at =
        model_of.try_emplace(unit.patient, model_of.size() % std::max<std::size_t>(models, 1));
    unit.item = named(unit.item, at.first->second);
  }
  return clinic;
}

/// `items` above 0 widens the catalogue, which is not timed.
Assessed time_proposal(const char* file, Date today, std::size_t items) {
  const auto& priors = desk::built_in_priors();
  Stages stages;
  Clinic clinic = store::load_clinic(*open(file)->read());
  stages.ended("read the clinic file");
  if (items > 0) {
    clinic = widened(std::move(clinic), items);
    stages.leave_out();
  }
  clinic = as_of(std::move(clinic), today);
  const auto fitted = wear::fit_clinic(clinic, priors, today);
  stages.ended("fit the wear model");
  auto lives = wear::lives_of_units_in_use(clinic, fitted, today);
  stages.ended("lives of the units in use");
  const auto proposal = supply::propose(clinic, lives, today);
  stages.ended("proposal");
  fmt::print("{} units, {} in use, {} items, {} lines: {:.3f} s\n", clinic.units.size(),
             lives.size(), clinic.items.size(), proposal.size(), stages.total());
  return {std::move(clinic), std::move(lives), stages.total()};
}

void compare_with_peers(const Assessed& ours, Date today, const std::filesystem::path& folder) {
  bench::write_inputs(ours.clinic, ours.lives, today, folder);
  const auto tell = [&](const char* who, const std::optional<double>& seconds) {
    if (seconds) {
      fmt::print("{}: {:.2f} s, {:.1f} times all of ours\n", who, *seconds,
                 *seconds / ours.seconds);
    } else {
      fmt::print("{}: is not there\n", who);
    }
  };
  const auto r = bench::time_r(folder);
  tell("R script, lives given", r);
  if (r) {
    const auto agreement = bench::compare_targets(ours.clinic, ours.lives, today, folder);
    fmt::print("  its levels of {} items: {:.1f} % as ours, {:.1f} % within one piece\n",
               agreement.items, 100 * agreement.same, 100 * agreement.within_one);
  }
  tell("spreadsheet, lives given", bench::time_spreadsheet(folder));
}

}  // namespace

int main(int count, char** arguments) {
  const bool widen = count > 2 && std::string_view{arguments[count - 2]} == "--items";
  const std::size_t items = widen ? std::strtoul(arguments[count - 1], nullptr, 10) : 0;
  if (widen) count -= 2;
  if (count != 2 && count != 3) {
    fmt::print(stderr,
               "Usage: proposal_bench FILE [FOLDER] [--items N]\n"
               "FOLDER is for what an R script and a spreadsheet program work on.\n"
               "--items makes the catalogue at least so long, by models that patients share.\n");
    return 2;
  }
  const Date today = make_date(2026, 11, 25);
  Assessed best;
  for (int i = 0; i < 3; ++i) {
    auto made = time_proposal(arguments[1], today, items);
    if (i == 0 || made.seconds < best.seconds) best = std::move(made);
  }
  if (count == 3) compare_with_peers(best, today, arguments[2]);
  return 0;
}
