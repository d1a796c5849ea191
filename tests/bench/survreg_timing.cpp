#include "bench/survreg_timing.hpp"

#include <cstdio>
#include <filesystem>
#include <fstream>

#include <fmt/format.h>
#include <fmt/os.h>

namespace sparewell::bench {
namespace {

namespace fs = std::filesystem;

void write_rows(const wear::LifeTable& table, const fs::path& file) {
  auto out = fmt::output_file(file.string());
  out.print("time,event,a,b,c\n");
  for (Eigen::Index i = 0; i < table.time.size(); ++i) {
    out.print("{:.17g},{:d},{:.17g},{:.17g},{:.17g}\n", table.time[i],
              static_cast<int>(table.event[static_cast<std::size_t>(i)]), table.covariates(i, 0),
              table.covariates(i, 1), table.covariates(i, 2));
  }
}

}  // namespace

std::optional<SurvregTiming> time_survreg(const wear::LifeTable& table) {
  const fs::path folder = fs::temp_directory_path();
  const fs::path rows = folder / "sparewell_bench_rows.csv";
  const fs::path answer = folder / "sparewell_bench_answer.txt";
  write_rows(table, rows);
  const auto command = fmt::format("Rscript --vanilla '{}/tests/bench/survreg.R' '{}' > '{}' 2>&1",
                                   SPAREWELL_SOURCE_DIR, rows.string(), answer.string());
  const int status = std::system(command.c_str());
  std::optional<SurvregTiming> timing;
  std::ifstream in{answer};
  double number = 0;
  if (status == 0 && in >> number) {
    timing.emplace();
    timing->seconds = number;
    while (in >> number) timing->estimates.push_back(number);
  }
  in.close();
  fs::remove(rows);
  fs::remove(answer);
  return timing;
}

}  // namespace sparewell::bench
