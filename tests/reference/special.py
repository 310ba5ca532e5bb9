"""Special functions at 40 digits with mpmath, for tests/vectors/special.csv.

The arguments are the doubles that the library gets, not the decimals they are written as.
"""

import mpmath as mp

mp.mp.dps = 40
HALF = mp.mpf(1) / 2


def normal_cdf(x):
    return mp.erfc(-mp.mpf(x) / mp.sqrt(2)) / 2


def normal_quantile(p):
    return _root(lambda x: normal_cdf(x) - mp.mpf(p), -40, 40)


def gamma_p(a, x):
    return mp.gammainc(a, 0, x, regularized=True)


def gamma_q(a, x):
    return mp.gammainc(a, x, mp.inf, regularized=True)


def beta_i(a, b, x):
    return mp.betainc(a, b, 0, mp.mpf(x), regularized=True)


def t_cdf(t, nu):
    t, nu = mp.mpf(t), mp.mpf(nu)
    tail = mp.betainc(nu / 2, HALF, 0, nu / (nu + t * t), regularized=True) / 2
    return 1 - tail if t > 0 else tail


def f_cdf(f, m, n):
    m, n, f = mp.mpf(m), mp.mpf(n), mp.mpf(f)
    return mp.betainc(m / 2, n / 2, 0, m * f / (m * f + n), regularized=True)


def f_upper(f, m, n):
    m, n, f = mp.mpf(m), mp.mpf(n), mp.mpf(f)
    return mp.betainc(n / 2, m / 2, 0, n / (m * f + n), regularized=True)


def t_quantile(p, nu):
    return _root(lambda x: t_cdf(x, nu) - mp.mpf(p), -mp.mpf(10) ** 13, mp.mpf(10) ** 13)


def t_factor(k, nu):
    """The t that has the probability of k for the normal distribution."""
    tail = normal_cdf(-k)
    # it is above k, and with many degrees of freedom close to it
    return _root(lambda x: tail - t_cdf(-x, nu), mp.mpf(k), 2 * mp.mpf(k) if nu > 100 else mp.mpf(10) ** 13)


def f_quantile(p, m, n):
    return _root(lambda x: f_cdf(x, m, n) - mp.mpf(p), mp.mpf(10) ** -30, 1e6)


def chi2_quantile(p, n):
    return _root(lambda x: mp.gammainc(mp.mpf(n) / 2, 0, x / 2, regularized=True) - mp.mpf(p), mp.mpf(10) ** -30, 1e6)


def _root(f, low, high):
    """Bisection to 25 digits: slow, and sure."""
    low, high = mp.mpf(low), mp.mpf(high)
    for _ in range(180):
        middle = (low + high) / 2
        if f(middle) < 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2
