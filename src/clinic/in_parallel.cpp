#include "clinic/in_parallel.hpp"

#include <tbb/parallel_for.h>

namespace sparewell {

void in_parallel(std::size_t count, const std::function<void(std::size_t)>& work) {
  tbb::parallel_for(std::size_t{0}, count, work);
}

}  // namespace sparewell
