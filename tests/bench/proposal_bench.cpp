// How long a full proposal takes from the clinic file, stage by stage.
#include <chrono>
#include <filesystem>

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

Assessed time_proposal(const char* file, Date today) {
  const auto& priors = desk::built_in_priors();
  Stages stages;
  Clinic clinic = store::load_clinic(*open(file)->read());
  stages.ended("read the clinic file");
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
  if (count != 2 && count != 3) {
    fmt::print(stderr,
               "Usage: proposal_bench FILE [FOLDER]\n"
               "FOLDER is for what an R script and a spreadsheet program work on.\n");
    return 2;
  }
  const Date today = make_date(2026, 11, 25);
  Assessed best;
  for (int i = 0; i < 3; ++i) {
    auto made = time_proposal(arguments[1], today);
    if (i == 0 || made.seconds < best.seconds) best = std::move(made);
  }
  if (count == 3) compare_with_peers(best, today, arguments[2]);
  return 0;
}
