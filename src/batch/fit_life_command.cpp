#include <cmath>
#include <filesystem>
#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/life_table.hpp"
#include "exchange/csv_text.hpp"

namespace sparewell::batch {
namespace {

template <class T>
T or_wrong_use(Expected<T> value) {
  if (!value) throw WrongUse{value.error().sentence};
  return std::move(*value);
}

/// Names as R's survreg gives them, so that the two can be laid side by side.
Json json_of(const wear::LifeFit& fit, const std::vector<std::string>& names) {
  Json coefficients{{"(Intercept)", fit.intercept}};
  Json errors{{"(Intercept)", fit.intercept_error}};
  for (std::size_t i = 0; i < names.size(); ++i) {
    coefficients[names[i]] = fit.coefficients[static_cast<Eigen::Index>(i)];
    errors[names[i]] = fit.coefficient_errors[static_cast<Eigen::Index>(i)];
  }
  errors["Log(scale)"] = fit.log_scale_error;
  if (fit.log_theta_error) errors["Log(theta)"] = *fit.log_theta_error;
  Json made{{"shape", fit.shape},
            {"scale", fit.scale},
            {"coefficients", coefficients},
            {"standard_errors", errors},
            {"log_likelihood", fit.log_likelihood},
            {"n", fit.n},
            {"events", fit.events}};
  if (fit.groups > 0) {
    made["groups"] = fit.groups;
    made["theta"] = fit.theta;
  }
  return made;
}

void print_words(const wear::LifeFit& fit, const std::vector<std::string>& names) {
  std::cout << fmt::format(
      "{} lives, {} ended\nshape {:.6g}, scale {:.6g}, log-likelihood {:.6f}\n", fit.n, fit.events,
      fit.shape, fit.scale, fit.log_likelihood);
  for (std::size_t i = 0; i < names.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    std::cout << fmt::format(
        "{}: one more makes lives {:.4g} times as long (log {:.6g}, standard "
        "error {:.6g})\n",
        names[i], std::exp(fit.coefficients[at]), fit.coefficients[at], fit.coefficient_errors[at]);
  }
  if (fit.groups == 0) return;
  std::cout << fmt::format(
      "{} groups: {}\n", fit.groups,
      fit.log_theta_error ? fmt::format("multiplier with variance {:.6g} (standard error of its "
                                        "log {:.6g})",
                                        fit.theta, *fit.log_theta_error)
                          : "no sign of a multiplier, its variance is estimated as 0");
}

int run(const Context& context, const std::string& path, const std::string& group) {
  const auto file =
      or_wrong_use(desk::read_life_table(std::filesystem::path{path}.filename().string(),
                                         or_wrong_use(exchange::read_bytes(path)), group));
  const auto fit = or_wrong_use(wear::fit_weibull_life(file.table));
  if (context.json) {
    print(json_of(fit, file.table.covariate_names));
  } else {
    print_words(fit, file.table.covariate_names);
  }
  if (file.left_out == 0) return done;
  std::cerr << fmt::format("{} {} with a blank or NA cell left out.\n", file.left_out,
                           file.left_out == 1 ? "row" : "rows");
  return done_with_findings;
}

}  // namespace

void add_fit_life(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "fit-life", "Weibull accelerated life by maximum likelihood, from a table time,event,...");
  const auto path = std::make_shared<std::string>();
  command->add_option("file", *path, "CSV with columns time, event and covariates")->required();
  const auto group = std::make_shared<std::string>();
  command->add_option(
      "--group", *group,
      "Column whose rows share a Gamma multiplier on the hazard; adds its variance");
  command->callback([&context, path, group] {
    context.run = [&context, path, group] { return run(context, *path, *group); };
  });
}

}  // namespace sparewell::batch
