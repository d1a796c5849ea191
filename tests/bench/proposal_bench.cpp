// How long a full proposal takes from the clinic file, stage by stage.
#include <chrono>

#include <fmt/format.h>

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

void time_proposal(const char* file, Date today) {
  const auto& priors = desk::built_in_priors();
  Stages stages;
  Clinic clinic = store::load_clinic(*open(file)->read());
  stages.ended("read the clinic file");
  clinic = as_of(std::move(clinic), today);
  const auto fitted = wear::fit_clinic(clinic, priors, today);
  stages.ended("fit the wear model");
  const auto lives = wear::lives_of_units_in_use(clinic, fitted, today);
  stages.ended("lives of the units in use");
  const auto proposal = supply::propose(clinic, lives, today);
  stages.ended("proposal");
  fmt::print("{} units, {} in use, {} items, {} lines: {:.3f} s\n", clinic.units.size(),
             lives.size(), clinic.items.size(), proposal.size(), stages.total());
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 2) {
    fmt::print(stderr, "Usage: proposal_bench FILE\n");
    return 2;
  }
  for (int i = 0; i < 3; ++i) time_proposal(arguments[1], make_date(2026, 11, 25));
  return 0;
}
