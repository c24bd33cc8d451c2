FROM node:22-slim
WORKDIR /app
COPY package.json package-lock.json ./
RUN npm ci --no-audit --no-fund
COPY . .
RUN npm run build && npm prune --omit=dev && mkdir /data && chown node:node /data
USER node
ENV NODE_ENV=production NEARSHERD_CONTAINER=1 NEARSHERD_DATA=/data PORT=8470
VOLUME /data
EXPOSE 8470
HEALTHCHECK --interval=30s --start-period=20s CMD ["node", "-e", "fetch('http://localhost:8470/api/health').then(a => process.exit(a.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node_modules/.bin/tsx", "api/main.ts"]
